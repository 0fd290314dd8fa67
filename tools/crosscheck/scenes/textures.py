"""Surfaces as factors about 1, one value a pixel: tape, paper, cardboard, brushed metal."""
import cv2
import numpy as np


def noise(shape, rng, across, along=None, turn=None):
    """Gaussian noise of unit deviation with grain sizes in px, running along rows unless turned by 90 degrees."""
    along = across if along is None else along
    sizes = (across, along) if turn else (along, across)
    fx, fy = (max(1, int(s / 3)) for s in sizes)
    small = (shape[0] // fy + 1, shape[1] // fx + 1)
    grain = rng.standard_normal(small).astype(np.float32)
    grain = cv2.GaussianBlur(grain, (0, 0), max(sizes[0] / fx, 0.3), sigmaY=max(sizes[1] / fy, 0.3), borderType=cv2.BORDER_REFLECT)
    grain = cv2.resize(grain, (small[1] * fx, small[0] * fy), interpolation=cv2.INTER_LINEAR)[:shape[0], :shape[1]]
    return (grain - grain.mean()) / grain.std()


def fibres(shape, rng, count, length, density):
    """Short curved strokes, lighter and darker than the ground, of unit deviation."""
    ground = np.full(shape, 128, np.uint8)
    for _ in range(count):
        turn, bow = rng.uniform(0, 2 * np.pi), rng.normal(0, 0.4)
        way = np.linspace(0, rng.uniform(0.4, 1) * length * density, 6)
        heading = turn + bow * np.linspace(-1, 1, 6)
        points = rng.uniform(0, shape[::-1]) + np.stack([way * np.cos(heading), way * np.sin(heading)], 1)
        cv2.polylines(ground, [np.int32(points * 16)], False, int(rng.uniform(60, 196)), 1, cv2.LINE_AA, 4)
    ground = cv2.GaussianBlur(ground.astype(np.float32), (0, 0), 0.03 * density)
    return (ground - ground.mean()) / max(ground.std(), 1e-6)


def crepe(shape, rng, density, strength):
    """Creased tape: ridges across the tape, uneven in depth, with a fine grain."""
    turn = rng.random() < 0.5
    coarse = noise(shape, rng, 0.14 * density, rng.uniform(1.5, 4) * density, turn)
    ridges = 0.8 - np.abs(noise(shape, rng, 0.25 * density, rng.uniform(2, 6) * density, turn))
    depth = 1 + 0.3 * noise(shape, rng, 2 * density)
    return 1 + strength * (0.6 * coarse * depth + 0.5 * ridges * depth + 0.35 * noise(shape, rng, 0.05 * density))


def paper(shape, rng, density, strength):
    """Cloudy sheet with fibres."""
    return 1 + strength * (0.6 * noise(shape, rng, 0.8 * density) + 0.4 * noise(shape, rng, 0.07 * density)
                           + 0.7 * fibres(shape, rng, 1500, 1.2, density))


def cardboard(shape, rng, density, strength):
    """Corrugation that shows through, long fibres, a few dark flecks."""
    rows, columns = np.mgrid[:shape[0], :shape[1]].astype(np.float32) / density
    turn = rng.uniform(0, np.pi)
    wave = np.sin(2 * np.pi * (columns * np.cos(turn) + rows * np.sin(turn)) / rng.uniform(4, 8) + rng.uniform(0, 6))
    flecks = np.zeros(shape, np.float32)
    for _ in range(400):
        at = tuple(int(c * 16) for c in rng.uniform(0, shape[::-1]))
        cv2.circle(flecks, at, int(rng.uniform(0.02, 0.06) * density * 16), float(rng.uniform(0, 3)), -1, cv2.LINE_8, 4)
    flecks = cv2.GaussianBlur(flecks, (0, 0), 0.03 * density)
    return 1 + strength * (0.8 * wave + 0.6 * fibres(shape, rng, 2500, 2.5, density) + 0.5 * noise(shape, rng, 0.1 * density) - flecks)


def smooth(shape, rng, density, strength):
    """Coated sheet: hardly any structure."""
    return 1 + 0.3 * strength * noise(shape, rng, 3 * density)


def none(shape, rng, density, strength):
    """No structure."""
    return np.ones(shape, np.float32)


def brushed(shape, rng, density, strength):
    """Brushed metal."""
    return 1 + strength * (noise(shape, rng, 0.1 * density, 12 * density, rng.random() < 0.5) + 0.7 * noise(shape, rng, 12 * density))
