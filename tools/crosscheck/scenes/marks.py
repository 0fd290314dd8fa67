"""Burn marks: opacity as a function of place, drawn on a flat picture. The truth is the beam's centre, not the stain's."""
from dataclasses import dataclass, field

import cv2
import numpy as np
from scipy.special import erfc

from .textures import noise

PROFILES = ["disc", "gaussian", "super", "halo"]


@dataclass
class Mark:
    """One pulse's mark. `profile` is one of PROFILES, "ring" or "hole"; lengths in mm."""
    u: float
    v: float
    radius: float
    profile: str
    depth: float
    soft: float
    power: float
    halo: float
    inner: float
    ratio: float
    turn: float
    waves: list = field(default_factory=list)

    @property
    def reach(self):
        """Radius of a circle that holds all of the mark that can be seen."""
        wide = {"gaussian": 1.5, "halo": self.halo + 0.2, "ring": 1.25, "hole": 1.3}.get(self.profile, 1 + 1.5 * self.soft)
        return self.radius * wide * np.sqrt(self.ratio) * (1 + sum(a for _, a, _ in self.waves))

    def distance(self, u, v):
        """Distance from the centre in radii of the outline. No two orders follow each other, so the outline's area keeps its centre."""
        c, s = np.cos(self.turn), np.sin(self.turn)
        a, b = (u - self.u) * c + (v - self.v) * s, (v - self.v) * c - (u - self.u) * s
        a, b = a / np.sqrt(self.ratio), b * np.sqrt(self.ratio)
        angle = np.arctan2(b, a)
        outline = 1 + sum(h * np.cos(k * angle + phase) for k, h, phase in self.waves)
        return np.hypot(a, b) / self.radius / outline

    def layers(self, u, v):
        """Opacities of (scorch, char, hole)."""
        r = self.distance(u, v)
        zero = np.zeros_like(r)
        disc = 0.5 * erfc((r - 1) / self.soft)
        if self.profile == "gaussian":
            return zero, self.depth * np.exp(-1.2 * r**2), zero
        if self.profile == "super":
            return zero, self.depth * np.exp(-r**self.power), zero
        if self.profile == "halo":
            return 0.6 * self.depth * 0.5 * erfc((r - self.halo) / 0.15), self.depth * disc, zero
        if self.profile == "ring":
            return zero, self.depth * disc * (1 - self.inner * np.exp(-(r / 0.5) ** 2)), zero
        if self.profile == "hole":
            return 0.4 * self.depth * 0.5 * erfc((r - 1.12) / 0.1), self.depth * disc, 0.5 * erfc((r - self.inner) / 0.03)
        return zero, self.depth * disc, zero


def make(rng, profile, diameter, ragged=True):
    """A mark at the centre."""
    orders = [[2, 5, 8, 11], [3, 6, 9, 13], [4, 7, 12], [3, 5, 10], [2, 4, 9]][rng.integers(5)]
    waves = [(k, rng.uniform(0, 0.06) * 2 / k, rng.uniform(0, 2 * np.pi)) for k in orders] if ragged else []
    inner = rng.uniform(0.35, 0.8) if profile == "ring" else rng.uniform(0.45, 0.78)
    return Mark(0.0, 0.0, diameter / 2, profile, rng.uniform(0.8, 0.98), rng.uniform(0.04, 0.2), rng.uniform(3, 8),
                rng.uniform(1.25, 1.6), inner, rng.uniform(1, 1.15) if rng.random() < 0.4 else 1.0, rng.uniform(0, np.pi), waves)


def scatter(rng, marks, half, gap):
    """Puts the marks at random places inside the square of that half side, outlines at least `gap` apart. False when there is no room."""
    for i, mark in enumerate(marks):
        for _ in range(400):
            room = half - mark.reach
            mark.u, mark.v = (float(c) for c in rng.uniform(-room, room, 2))
            if all(np.hypot(mark.u - o.u, mark.v - o.v) > mark.reach + o.reach + gap for o in marks[:i]):
                break
        else:
            return False
    return True


def window(picture, density, u, v, reach):
    """The part of the picture about a point, with the coordinates of its pixels."""
    rows, columns = picture.shape[:2]
    x, y = u * density + (columns - 1) / 2, (rows - 1) / 2 - v * density
    left, top = max(0, int(x - reach * density)), max(0, int(y - reach * density))
    part = picture[top:int(y + reach * density) + 2, left:int(x + reach * density) + 2]
    py, px = np.mgrid[:part.shape[0], :part.shape[1]].astype(np.float64)
    return part, (px + left - (columns - 1) / 2) / density, ((rows - 1) / 2 - py - top) / density


def burn(picture, density, group, rng, colours, joint="max"):
    """Draws marks that may overlap. `colours` are those of (scorch, char, hole) in the picture's own space."""
    u, v = np.mean([m.u for m in group]), np.mean([m.v for m in group])
    reach = max(m.reach + np.hypot(m.u - u, m.v - v) for m in group) * 1.6 + 0.3
    part, pu, pv = window(picture, density, u, v, reach)
    all_layers = [m.layers(pu, pv) for m in group]
    mottle = np.clip(1 + rng.uniform(0, 0.25) * noise(part.shape[:2], rng, 0.08 * density), 0, 2)[..., None]
    for place, colour in enumerate(colours):
        shares = [layers[place] for layers in all_layers]
        share = np.maximum.reduce(shares) if joint == "max" else 1 - np.prod([1 - s for s in shares], axis=0)
        share = np.clip(share, 0, 1)[..., None].astype(np.float32)
        part[:] = part * (1 - share) + colour * (mottle if place < 2 else 1 + 0.1 * (mottle - 1)) * share


def smoke(picture, density, mark, rng, colour):
    """A stain blown to one side of a mark, without an edge of its own."""
    turn, strength, length = rng.uniform(0, 2 * np.pi), rng.uniform(0.35, 0.6), rng.uniform(1.2, 1.9) * mark.reach
    part, pu, pv = window(picture, density, mark.u, mark.v, mark.reach + 3 * length)
    a = (pu - mark.u) * np.cos(turn) + (pv - mark.v) * np.sin(turn)
    b = (pv - mark.v) * np.cos(turn) - (pu - mark.u) * np.sin(turn)
    wide = 0.75 * mark.reach + 0.35 * np.maximum(a, 0)
    plume = np.exp(-(b / wide) ** 2) * np.where(a > 0, np.exp(-(a / length) ** 2), np.exp(-(a / (0.5 * mark.reach)) ** 2))
    plume *= np.clip(1 + 0.25 * noise(part.shape[:2], rng, 0.5 * density), 0, 2)
    share = np.clip(strength * cv2.GaussianBlur(plume, (0, 0), 0.1 * density), 0, 0.9)[..., None].astype(np.float32)
    part[:] = part * (1 - share) + colour * share
