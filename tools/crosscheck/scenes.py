"""Makes photos of a taped and burnt target with a known truth: a second renderer, independent of tools/MarkReader.Scenes.

    tools/run card --out card.png
    /usr/bin/python3 tools/crosscheck/scenes.py --card card.png --kind all --count 3 --seed 1 --out DIR
    tools/run audit DIR

It needs python3-opencv, python3-numpy, python3-scipy, python3-pil and the DejaVu font, and takes from the program only the 50 mm
card's PNG. Each scene draws by chance whether shadows, blending and noise work on sRGB values, as in simple scripts, or in linear
light. Beside NAME.jpg stands NAME.truth.json: the marks' centres (u right, v up, mm from the card's centre) and the scene's
parameters. The truth is the beam's centre: the stain does not count, and on a bent card u and v are arc lengths on the paper.
Not modelled: thickness of card and tape, depth of field, demosaicing, rolling shutter, chromatic aberration.
"""
import argparse
import json
import pathlib
import zlib
from dataclasses import asdict, dataclass, field

import cv2
import numpy as np

from scenes import light, marks, target
from scenes.camera import Camera, photograph


@dataclass
class Scene:
    """Parameters of one scene; a kind changes some of them."""
    kind: str
    seed: int
    linear: bool
    scale: float                       # px/mm at the card's centre
    width: int
    height: int
    focal: float                       # in widths of the photo
    tilt: float
    towards: float
    roll: float
    place: list = field(default_factory=list)   # of the card's centre, px
    distortion: float = 0.0
    sagitta: float = 0.0
    bend: float = 0.0
    material: str = "tape"
    lay: str = "patch"
    texture: float = 1.0
    count: int = 2
    profiles: list = field(default_factory=lambda: list(marks.PROFILES))
    diameters: tuple = (1.2, 4.0)
    overlap: str = ""
    stain: bool = False
    bright: bool = False
    faint: bool = False
    pen: bool = False
    dirty: bool = False
    tape_over: bool = False
    screws: int = 0
    second: str = ""
    shadow: bool = False
    glare: bool = False
    dark: float = 1.0
    defocus: float = 0.0
    motion: float = 0.0
    softness: float = 0.6              # px, the lens's own
    noise: float = 0.006
    sharpen: bool = False
    form: str = "jpg"


KINDS = {}


def kind(function):
    """Registers a kind of scene under its function's name."""
    KINDS[function.__name__] = function
    return function


def named(name, **values):
    """Registers a kind that only sets parameters; a value may be a function of the generator."""
    def change(scene, rng):
        for key, value in values.items():
            setattr(scene, key, value(rng) if callable(value) else value)
    KINDS[name] = change


def between(low, high):
    """Uniform draw."""
    return lambda rng: float(rng.uniform(low, high))


def oneof(*choices):
    """Equal chances."""
    return lambda rng: choices[rng.integers(len(choices))]


named("tidy", texture=oneof(0.0, 0.3, 0.7), noise=between(0.001, 0.004), tilt=between(0, 6))
named("tilt", tilt=between(30, 55), scale=between(24, 36), focal=between(1.2, 2))
named("small", scale=between(9.5, 11), width=oneof(2000, 2400, 2800), diameters=(1.5, 4.0))
named("large", scale=between(36, 43), tilt=between(0, 8), roll=between(-2, 2))
named("rotated", roll=between(20, 340), scale=between(18, 27))
named("wideLens", focal=between(0.6, 0.72), tilt=between(0, 14), scale=between(20, 30),
      distortion=lambda rng: float(rng.uniform(0.03, 0.10) * (-1 if rng.random() < 0.8 else 1)))
named("curved", sagitta=lambda rng: float(rng.uniform(0.2, 0.8) * rng.choice([-1, 1])), bend=oneof(0, 0, 90, 90, 30, 45, 120))
named("blur", defocus=between(1.5, 4))
named("motion", motion=between(3, 8))
named("dark", dark=between(0.22, 0.4), noise=between(0.012, 0.024), diameters=(1.8, 4.0))
named("shadow", shadow=True)
named("glare", glare=True, count=oneof(2, 3), diameters=(1.6, 4.0))
named("stain", stain=True, profiles=["disc", "super", "halo"])
named("ring", profiles=["ring"], diameters=(1.8, 4.0))
named("hole", profiles=["hole"], diameters=(1.8, 4.0))
named("brightHole", profiles=["hole"], diameters=(1.8, 4.0), bright=True)
named("faint", faint=True, diameters=(1.8, 4.0), texture=between(0.4, 1.2), profiles=["disc", "super", "gaussian"])
named("overlap", overlap=oneof("max", "multiply"), profiles=["disc", "super"], diameters=(2.0, 4.0), scale=between(20, 32))
named("one", count=1)
named("four", count=4, diameters=(1.2, 3.4))
named("paper", material="paper", lay=oneof("self", "self", "window"))
named("cream", material="cream", lay=oneof("patch", "window"))
named("blue", material="blue", lay=oneof("patch", "window"))
named("cardboard", material="cardboard", lay="window", profiles=["disc", "super", "halo"])
named("thermal", material="thermal", lay=oneof("window", "patch"))
named("tapeOver", tape_over=True, material=oneof("tape", "cream", "blue"), lay="self")
named("pen", pen=True)
named("dirty", dirty=True, scale=between(22, 32))
named("screws", screws=lambda rng: int(rng.integers(4, 9)), scale=between(17, 24))
named("secondCard", second=oneof("whole", "cut"), scale=between(14, 19))


@kind
def formats(scene, rng):
    """Every form of file in turn."""
    scene.form = ["webp", "png", "grey", "cmyk", "png16", "alpha"][(scene.seed % 1000) % 6]
    scene.width = int(rng.choice([2000, 2400]))
    scene.scale = rng.uniform(17, 24)


def start(name, seed, rng):
    """A scene like most photos, changed to its kind, the frame made large enough for the card."""
    scene = Scene(name, seed, bool(rng.random() < 0.5), rng.uniform(18, 33), int(rng.choice([2400, 3000, 3000, 3264])), 0,
                  rng.uniform(0.8, 1.6), rng.uniform(0, 18), rng.uniform(0, 360), rng.normal(0, 5),
                  material=str(rng.choice(["tape", "tape", "cream", "paper"])), lay=str(rng.choice(["patch", "patch", "window"])),
                  texture=float(rng.choice([0, 0.6, 1, 1.3])), count=int(rng.choice([2, 2, 2, 3])), softness=rng.uniform(0.4, 0.9),
                  noise=rng.uniform(0.003, 0.010), sharpen=bool(rng.random() < 0.25))
    KINDS[name](scene, rng)
    turn = np.radians(scene.roll)
    short = 50 * scene.scale * (abs(np.cos(turn)) + abs(np.sin(turn)))
    room = 1.04 if name == "large" else 1.12
    ratio = float(rng.choice([0.75, 0.75, 0.667, 1.333]))
    lengthwise = 0 if name == "large" else scene.width
    lengthwise = int(min(max(lengthwise, short * room / min(ratio, 1 / ratio)), 4000))
    scene.width, scene.height = (lengthwise, int(lengthwise * ratio)) if ratio < 1 else (int(lengthwise / ratio), lengthwise)
    return scene


def place_marks(scene, rng):
    """The marks as groups: those of a group are drawn together."""
    gap = 4.0 if scene.stain else 1.2
    while True:
        made = [marks.make(rng, str(rng.choice(scene.profiles)), rng.uniform(*scene.diameters), not (scene.kind == "tidy" and rng.random() < 0.5))
                for _ in range(scene.count)]
        for m in made:
            m.depth = 1 - (1 - m.depth) * (0.4 if scene.linear else 1)
            if scene.faint:
                contrast = max(rng.uniform(3, 5.5) * target.MATERIALS[scene.material][2] * scene.texture, 0.08) * (1.3 if m.profile == "gaussian" else 1)
                m.depth, m.soft = contrast * (1.9 / 0.85 if scene.linear else 1 / 0.55), max(m.soft, 0.1)
        if scene.overlap:
            one, other = made[0], marks.make(rng, made[0].profile, 2 * made[0].radius * rng.uniform(0.93, 1.07))
            other.depth, other.soft, other.power = one.depth * rng.uniform(0.9, 1), one.soft, max(one.power, 5)
            one.depth, one.power = one.depth * 0.9, other.power
            whole = marks.make(rng, "disc", 2 * one.radius * 1.6, False)
            if marks.scatter(rng, [whole], 12.4, gap):
                turn, apart = rng.uniform(0, np.pi), one.radius * rng.uniform(0.9, 1.15) / 2
                for m, side in ((one, 1), (other, -1)):
                    m.u, m.v = whole.u + side * apart * np.cos(turn), whole.v + side * apart * np.sin(turn)
                return [[one, other]]
        elif marks.scatter(rng, made, 12.4, gap):
            return [[m] for m in made]


def paint(scene, rng, ink, density, groups):
    """The flat picture of card, tape and marks, with its mask."""
    space = light.to_linear if scene.linear else np.float32
    size = round(target.SIDE * density)
    picture, alpha = target.card(ink, density, rng, space, scene.texture == 0)
    printed = picture.mean(axis=2) > 0.5 * picture.max()
    stuff = target.surface(scene.material, size, density, rng, space, scene.texture)
    tape = stuff if scene.material in ("tape", "cream", "blue") else target.surface("tape", size, density, rng, space)
    target.lay_zone(picture, density, rng, scene.lay, stuff)
    if scene.tape_over:
        target.strip(picture, alpha, density, rng, stuff, rng.normal(0, 0.3, 2), 57, rng.uniform(26.5, 31),
                     rng.choice([0, 90]) + rng.normal(0, 1.5), rng.uniform(0.7, 1))
    target.hold(picture, alpha, density, rng, tape)
    flat = [m for g in groups for m in g]
    if scene.pen:
        target.pen(picture, density, rng, space, flat)
    if scene.dirty:
        keep = [[(-18.75, -18.75), (18.75, 0), (-18.75, 18.75)], [(0, 18.75), (-18.75, -18.75), (18.75, -18.75)],
                [(-18.75, 0), (18.75, 18.75), (0, -18.75)], [(18.75, 18.75), (-18.75, 18.75), (18.75, -18.75)]][rng.integers(4)]
        target.spoil(picture, density, rng, space, tape, keep)
    if scene.screws:
        target.dots(picture, printed, density, rng, space, int(rng.integers(2, 6)))
    scorch, char = (space(np.float32(c)) for c in target.MATERIALS[scene.material][3])
    hole = space(np.float32([0.97, 0.96, 0.93]) * rng.uniform(0.75, 0.98)) if scene.bright else space(np.float32([1, 1, 1]) * rng.uniform(0.02, 0.08))
    for group in groups:
        for m in group:
            if scene.stain:
                marks.smoke(picture, density, m, rng, space(np.float32([0.36, 0.27, 0.18])))
        marks.burn(picture, density, group, rng, (scorch, scorch if scene.faint else char, hole), scene.overlap or "max")
    return np.clip(picture, 0, 1).astype(np.float32), alpha.astype(np.float32)


def take(scene, rng, ink, density, groups):
    """The photo in sRGB."""
    space = light.to_linear if scene.linear else np.float32
    picture, alpha = paint(scene, rng, ink, density, groups)
    spare = (1 if scene.kind == "large" else 4) * scene.scale
    turn = np.radians(scene.roll)
    half = 25 * scene.scale * (abs(np.cos(turn)) + abs(np.sin(turn)))
    room = np.maximum(np.array([scene.width, scene.height]) / 2 - half - spare, 0) * (0.35 if scene.second else 1)
    scene.place = (np.array([scene.width, scene.height]) / 2 + rng.uniform(-1, 1, 2) * np.minimum(room, 400)).tolist()
    camera = Camera(scene.width, scene.height, scene.focal * scene.width, scene.scale, scene.tilt, scene.towards, scene.roll, scene.place,
                    scene.distortion, scene.sagitta, scene.bend)
    rough = 10.0 if scene.scale > 13 else 5.0
    background = (target.bench(2200, rough, rng, space, scene.screws), None, rough, 0.0, (0.0, 0.0), False)
    layers = []
    if scene.second:
        blank, mask = target.card(ink, density, rng, space)
        far = rng.uniform(54, 60) if scene.second == "whole" else rng.uniform(57, 75)
        side = rng.choice([0, 180] if scene.width > scene.height else [90, 270]) + rng.normal(0, 6)
        shift = far * np.cos(np.radians(side)), far * np.sin(np.radians(side))
        layers.append((blank, mask, density, rng.normal(0, 4) + rng.choice([0, 90, 180, 270]), shift, False))
    layers.append((picture, alpha, density, 0.0, (0.0, 0.0), True))
    photo, u, v = photograph(camera, background, layers)
    photo = light.uneven(photo, rng, rng.uniform(0, 0.3))
    every = [m for g in groups for m in g]
    if scene.shadow:
        m = every[0]
        photo = light.shadow(photo, u, v, rng, (m.u + rng.uniform(-0.5, 0.5) * m.radius, m.v + rng.uniform(-0.5, 0.5) * m.radius), scene.linear)
    if scene.glare:
        photo = light.glare(photo, u, v, rng, scene.linear)
    photo = np.minimum(photo * (scene.dark**2.2 if scene.linear else scene.dark), 1.2)
    if scene.defocus:
        photo = light.blur(photo, light.disc(scene.defocus))
    if scene.motion:
        photo = light.blur(photo, light.line(scene.motion, rng.uniform(0, 180)))
    photo = cv2.GaussianBlur(photo, (0, 0), scene.softness)
    photo = light.sensor(photo, rng, scene.linear, scene.noise * (scene.dark if scene.linear else 1))
    photo = light.to_srgb(photo) if scene.linear else photo
    return light.sharpened(photo, rng) if scene.sharpen else photo


def main():
    """Renders the scenes that the command line asks for."""
    words = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    words.add_argument("--card", type=pathlib.Path, required=True, help="the card's PNG as the program writes it")
    words.add_argument("--kind", default="all", help="all, or names with commas: " + ", ".join(KINDS))
    words.add_argument("--count", type=int, default=1, help="scenes of each kind")
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--out", type=pathlib.Path, required=True, help="folder for the photos and truths")
    asked = words.parse_args()
    names = list(KINDS) if asked.kind == "all" else asked.kind.split(",")
    if unknown := [n for n in names if n not in KINDS]:
        words.error(f"no such kind: {', '.join(unknown)}; there are {', '.join(KINDS)}")
    ink, density = target.load(asked.card)
    asked.out.mkdir(parents=True, exist_ok=True)
    for name in names:
        for number in range(asked.count):
            rng = np.random.default_rng([asked.seed, zlib.crc32(name.encode()), number])
            scene = start(name, asked.seed * 1000 + number, rng)
            groups = place_marks(scene, rng)
            path = light.save(take(scene, rng, ink, density, groups), asked.out / f"{name}-{scene.seed}", scene.form, rng)
            every = sorted((m for g in groups for m in g), key=lambda m: m.u)
            truth = {"marks": [{"u": round(m.u, 5), "v": round(m.v, 5)} for m in every],
                     "scene": {**asdict(scene), "drawn": [{"profile": m.profile, "radius": round(m.radius, 3)} for m in every]}}
            path.with_name(f"{name}-{scene.seed}.truth.json").write_text(json.dumps(truth, default=float) + "\n")
            print(path.name, flush=True)


if __name__ == "__main__":
    main()
