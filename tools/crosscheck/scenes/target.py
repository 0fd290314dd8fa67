"""Flat pictures of the taped target: the card with its zone and tape, and what lies under and beside it."""
import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

from . import textures

SIDE = 60          # side of the card's picture, mm; the card itself is 50 mm
MARKERS = [(u, v) for u in (-18.75, 0, 18.75) for v in (-18.75, 0, 18.75) if u or v]
FONT = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"

# colour, texture, its strength, (scorch, char) colours; all in sRGB
MATERIALS = {
    "tape": ((0.87, 0.80, 0.62), textures.crepe, 0.022, ((0.52, 0.33, 0.17), (0.14, 0.09, 0.06))),
    "cream": ((0.93, 0.88, 0.74), textures.crepe, 0.015, ((0.60, 0.40, 0.20), (0.20, 0.12, 0.08))),
    "blue": ((0.25, 0.49, 0.75), textures.crepe, 0.028, ((0.25, 0.25, 0.28), (0.08, 0.07, 0.07))),
    "paper": ((0.94, 0.93, 0.91), textures.paper, 0.008, ((0.66, 0.47, 0.26), (0.19, 0.12, 0.07))),
    "cardboard": ((0.66, 0.51, 0.35), textures.cardboard, 0.022, ((0.38, 0.24, 0.13), (0.10, 0.07, 0.05))),
    "thermal": ((0.93, 0.94, 0.95), textures.smooth, 0.006, ((0.55, 0.55, 0.58), (0.10, 0.10, 0.12))),
}


def load(path):
    """The card's ink (0 to 1) and its px/mm; the picture's middle is the card's printed centre."""
    image = Image.open(path)
    dpi = image.info.get("dpi")
    if not dpi:
        raise SystemExit(f"{path}: no resolution in the file (pHYs)")
    ink = 1 - np.asarray(image.convert("L"), np.float32) / 255
    density = round(dpi[0] / 25.4 * 1000) / 1000
    if abs(ink.shape[0] / density - 50) > 0.1 or (round(SIDE * density) - ink.shape[0]) % 2:
        raise SystemExit(f"{path}: the scenes need the 50 mm card")
    return ink, density


def grid(size, density):
    """u and v of the pixels of a square picture."""
    line = ((np.arange(size) - (size - 1) / 2) / density).astype(np.float32)
    return np.meshgrid(line, -line)


def polygon(size, density, corners):
    """Antialiased mask of a polygon given in mm."""
    mask = np.zeros((size, size), np.uint8)
    c = np.asarray(corners, float)
    points = np.stack([c[:, 0] * density + (size - 1) / 2, (size - 1) / 2 - c[:, 1] * density], 1)
    cv2.fillPoly(mask, [np.int32(np.round(points * 16))], 255, cv2.LINE_AA, 4)
    return (mask / np.float32(255))


def rectangle(centre, width, height, degrees, rng=None, torn=0.0):
    """Corners of a turned rectangle; `torn` mm makes its two short ends ragged."""
    steps = 25 if torn else 2
    y = np.linspace(-height / 2, height / 2, steps)
    rag = (lambda: rng.normal(0, torn, steps)) if torn else (lambda: 0.0)
    x = np.concatenate([width / 2 + rag() + 0 * y, -width / 2 + rag() + 0 * y])
    points = np.stack([x, np.concatenate([y, y[::-1]])], 1)
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    return points @ np.array([[c, s], [-s, c]]) + centre


def cover(picture, colour, mask, opacity=1.0):
    """Lays a colour or picture on the picture."""
    share = (mask * opacity)[..., None]
    picture *= 1 - share
    picture += share * colour


def surface(material, size, density, rng, space, strength=1.0):
    """Picture of a material; `space` turns sRGB into the scene's own values."""
    colour, texture, own, burns = MATERIALS[material]
    shift = rng.normal(0, 0.012, 3)
    amount = own * strength * rng.uniform(0.7, 1.3)
    return space(np.clip(np.float32(colour) + shift, 0, 0.97)) * texture((size, size), rng, density, amount).astype(np.float32)[..., None]


def card(ink, density, rng, space, tidy=False):
    """The printed card on its picture of SIDE mm, and its mask, cut by hand."""
    size = round(SIDE * density)
    margin = (size - ink.shape[0]) // 2
    full = np.zeros((size, size), np.float32)
    full[margin:-margin, margin:-margin] = ink
    white = space(np.float32([0.93, 0.93, 0.92]) + rng.normal(0, 0.01, 3).astype(np.float32))
    black = space(np.float32([1, 1, 1]) * rng.uniform(0.07, 0.15))
    sheet = white * (1 if tidy else textures.paper((size, size), rng, density, 0.004).astype(np.float32)[..., None])
    picture = sheet * (1 - full[..., None]) + black * full[..., None]
    cut = np.array([(-25, 25), (25, 25), (25, -25), (-25, -25)], float) * (1 + rng.uniform(0, 0.006, (4, 2)))
    return picture, polygon(size, density, cut)


def lay_zone(picture, density, rng, how, stuff):
    """Puts the burnt material into the free zone: "self" (the card's own paper), "patch" (tape on it) or "window" (cut out, tape below)."""
    size = picture.shape[0]
    if how == "self":
        return
    side = 2 * (rng.uniform(12.9, 13.9) if how == "patch" else rng.uniform(12.7, 13.05))
    corners = rectangle((rng.normal(0, 0.08), rng.normal(0, 0.08)), side, side, 0 if how == "window" else rng.normal(0, 0.5),
                        rng, rng.uniform(0.03, 0.09))
    mask = polygon(size, density, corners)
    rim = cv2.GaussianBlur(mask, (0, 0), 0.12 * density)
    if how == "window":
        picture *= (1 + 0.06 * (1 - mask) * rim)[..., None]
        cover(picture, stuff * (1 - 0.6 * (1 - rim))[..., None], mask)
    else:
        picture *= (1 - 0.25 * rim * (1 - mask))[..., None]
        cover(picture, stuff, mask, rng.uniform(0.93, 1))


def strip(picture, alpha, density, rng, stuff, centre, length, width, degrees, opacity):
    """A strip of tape with torn ends, on card and target."""
    mask = polygon(picture.shape[0], density, rectangle(centre, length, width, degrees, rng, 0.12))
    rim = cv2.GaussianBlur(mask, (0, 0), 0.1 * density)
    picture *= (1 - 0.2 * rim * (1 - mask))[..., None]
    cover(picture, stuff, np.where(alpha < 0.5, mask, mask * opacity))
    np.maximum(alpha, mask, out=alpha)


def hold(picture, alpha, density, rng, stuff):
    """Two to four pieces of tape that hold the card by its margin, clear of the markers."""
    for turn in rng.permutation([0, 90, 180, 270])[:rng.integers(2, 5)]:
        width = rng.uniform(5, 12)
        reach = rng.uniform(0.4, 1.5)
        x, y = 25 - reach + 3, rng.uniform(-18, 18)
        c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
        strip(picture, alpha, density, rng, stuff, (x * c - y * s, x * s + y * c), 6, width, turn + rng.normal(0, 2), rng.uniform(0.75, 0.95))


def pen(picture, density, rng, space, marks):
    """Lines, crosses and letters of a pen; crosses and letters keep clear of the marks."""
    size = picture.shape[0]
    ink = space(np.float32([(0.10, 0.13, 0.45), (0.08, 0.08, 0.09), (0.70, 0.10, 0.12)][rng.integers(3)]))
    layer = Image.new("L", (size, size), 0)
    draw = ImageDraw.Draw(layer)
    place = lambda p: (p[0] * density + (size - 1) / 2, (size - 1) / 2 - p[1] * density)
    stroke = lambda: max(1, int(rng.uniform(0.25, 0.7) * density))

    def free(reach):
        for _ in range(200):
            at = rng.uniform(-12.3 + reach, 12.3 - reach, 2)
            if all(np.hypot(at[0] - m.u, at[1] - m.v) > m.reach + reach + 0.4 for m in marks):
                return at
        return None

    for _ in range(rng.integers(1, 3)):
        a, b = rng.uniform(-12, 12, 2)
        ends = [(-12.5, a), (12.5, a + rng.normal(0, 1))] if rng.random() < 0.5 else [(b, -12.5), (b + rng.normal(0, 1), 12.5)]
        draw.line([place(e) for e in ends], fill=255, width=stroke())
    for _ in range(rng.integers(1, 4)):
        arm = rng.uniform(0.8, 2)
        at, turn = free(arm), rng.choice([0, np.pi / 4])
        if at is not None:
            for t in (turn, turn + np.pi / 2):
                d = arm * np.array([np.cos(t), np.sin(t)])
                draw.line([place(at - d), place(at + d)], fill=255, width=stroke())
    for _ in range(rng.integers(1, 4)):
        tall = rng.uniform(2, 4)
        at = free(tall * 0.9)
        if at is not None:
            word = str(rng.choice(["A", "B", "M2", "K", "3", "R", "up", "far", "X", "N", "7"]))
            draw.text(place(at), word, fill=255, font=ImageFont.truetype(FONT, int(tall * density / max(1, 0.75 * len(word)))), anchor="mm")
    mask = cv2.GaussianBlur(np.asarray(layer, np.float32) / 255, (0, 0), 0.035 * density)
    cover(picture, ink, mask * np.clip(0.88 + 0.03 * textures.noise(mask.shape, rng, 0.15 * density), 0, 1))


def blot(size, density, rng, centre, radius, ragged=0.25):
    """Mask of an irregular spot."""
    angle = np.linspace(0, 2 * np.pi, 90, endpoint=False)
    outline = 1 + sum(rng.normal(0, ragged / k) * np.cos(k * angle + rng.uniform(0, 6)) for k in range(2, 9))
    return polygon(size, density, np.asarray(centre) + radius * outline[:, None] * np.stack([np.cos(angle), np.sin(angle)], 1))


def spoil(picture, density, rng, space, stuff, keep):
    """Burns, smears or covers all markers but the ones kept."""
    size = picture.shape[0]
    for at in (m for m in MARKERS if m not in keep):
        way = rng.integers(3)
        near = np.asarray(at) + rng.normal(0, 0.5, 2)
        if way == 0:
            out = near + np.sign(near) * 0.8
            cover(picture, stuff, polygon(size, density, rectangle(out, rng.uniform(7.5, 9), rng.uniform(6, 8), rng.uniform(-30, 30), rng, 0.1)))
        else:
            colour = space(np.float32([(0.12, 0.09, 0.07), (0.33, 0.26, 0.19)][way - 1]))
            mask = blot(size, density, rng, near + np.sign(near) * 0.6, rng.uniform(3.2, 4.2), 0.2)
            mask = cv2.GaussianBlur(mask, (0, 0), rng.uniform(0.05, 0.25) * density)
            cover(picture, colour, mask * np.clip(0.95 + 0.06 * textures.noise(mask.shape, rng, 0.3 * density), 0, 1))


def dots(picture, ink_free, density, rng, space, count):
    """Small felt dots and pinholes on white places of the card outside the zone."""
    size = picture.shape[0]
    for _ in range(count):
        radius = rng.uniform(0.35, 0.7)
        for _ in range(300):
            u, v = rng.uniform(-23.5, 23.5, 2)
            x, y, r = u * density + size / 2, size / 2 - v * density, (radius + 0.3) * density
            if max(abs(u), abs(v)) > 13.6 + radius and ink_free[int(y - r):int(y + r), int(x - r):int(x + r)].all():
                cover(picture, space(np.float32([1, 1, 1]) * rng.uniform(0.05, 0.2)), blot(size, density, rng, (u, v), radius, 0.05))
                break


def bench(size, density, rng, space, screws=0, other=None):
    """The plate under the card and what lies about: metal, wood, or painted sheet; its edge; screw heads and holes."""
    u, v = grid(size, density)
    colour, texture, amount = [((0.62, 0.63, 0.64), textures.brushed, 0.05), ((0.33, 0.34, 0.36), textures.brushed, 0.06),
                               ((0.72, 0.58, 0.40), textures.cardboard, 0.05), ((0.16, 0.16, 0.17), textures.paper, 0.06),
                               ((0.55, 0.20, 0.15), textures.paper, 0.03), ((0.78, 0.77, 0.74), textures.paper, 0.02)][rng.integers(6)]
    shape = (size, size)
    picture = space(np.float32(colour)) * texture(shape, rng, density, amount).astype(np.float32)[..., None]
    if rng.random() < 0.7:
        half = rng.uniform(29, 45, 2)
        plate = polygon(size, density, rectangle(rng.normal(0, 1, 2), 2 * half[0], 2 * half[1], rng.normal(0, 2)))
        around = space(np.float32(rng.uniform(0.12, 0.6)) * np.float32([1, 0.97, 0.93])) * (1 + 0.2 * textures.noise(shape, rng, 6 * density))[..., None]
        rim = cv2.GaussianBlur(plate, (0, 0), 1.2 * density)
        picture = around * (1 - 0.6 * rim)[..., None] * (1 - plate[..., None]) + picture * plate[..., None]
    for _ in range(screws):
        for _ in range(100):
            at = rng.uniform(-48, 48, 2)
            if max(abs(at)) > 31.5:
                break
        _screw(picture, u - at[0], v - at[1], rng, space)
    return np.clip(picture, 0, 1).astype(np.float32)


def _screw(picture, u, v, rng, space):
    """A hole, or a head with a slot, a cross or a hexagon."""
    r, radius = np.hypot(u, v), rng.uniform(1.5, 4)
    edge = lambda limit, distance=r: np.clip(0.5 + (limit - distance) * 8, 0, 1)
    dark = space(np.float32([1, 1, 1]) * rng.uniform(0.03, 0.09))
    cover(picture, dark, np.clip(1.3 - r / radius, 0, 0.6))
    if rng.random() < 0.35:
        cover(picture, dark, edge(radius * 0.8))
        return
    metal = space(np.float32([1, 1, 0.98]) * rng.uniform(0.35, 0.75))
    turn = rng.uniform(0, np.pi)
    a, b = u * np.cos(turn) + v * np.sin(turn), v * np.cos(turn) - u * np.sin(turn)
    cover(picture, metal * (1 + 0.25 * a / radius * (r < radius))[..., None], edge(radius))
    kind = rng.integers(3)
    slot = edge(0.13 * radius, np.abs(b)) * edge(radius * 0.9)
    if kind == 1:
        slot = np.maximum(slot, edge(0.13 * radius, np.abs(a))) * edge(radius * 0.65)
    if kind == 2:
        slot = edge(0.5 * radius, np.max([np.abs(a * np.cos(t) + b * np.sin(t)) for t in (0, np.pi / 3, 2 * np.pi / 3)], axis=0))
    cover(picture, dark, slot)
