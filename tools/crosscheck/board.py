#!/usr/bin/python3
"""The calibration board's corners in fixtures/camera and the camera that took them, by OpenCV as Debian packages it.

Run: /usr/bin/python3 tools/crosscheck/board.py (needs python3-opencv; half a minute). Writes fixtures/crosscheck/opencv-board.json.

Independent of MarkReader: markers by cv2.aruco; along each side of a marker the places where linear light passes the middle between black
and white, a parabola through them (a lens bends a side by up to 0.3 px), corners where neighbouring sides meet; the camera from these
corners by cv2.calibrateCameraExtended. MarkReader fits edges, not corners, and has robust weights.

What differs, and what is done about it. Ink that has spread moves every corner outwards by the same length on the board: it is searched here
as the length with the least rms, and written. Stretch and bend of the print: MarkReader fits them, OpenCV takes the board as drawn; the
photos are drawn without, and the test looks whether MarkReader finds none. OpenCV's standard deviations take corners as independent.
cornerSubPix is not used for the values: a corner with one black quarter is rounded by blur, which draws it inwards; how far is written.
"""
import json

import cv2
import numpy as np

import card

FOLDER = card.ROOT / "fixtures" / "camera"
PARTS = np.linspace(0.14, 0.86, 25)
REACH = 5.0
STEP = 0.25
TERMS = ["fx", "fy", "cx", "cy", "k1", "k2", "p1", "p2", "k3"]


def markers():
    """Middle (u, v) of each marker by id, in mm; rows from the top, as calibration/boards says."""
    b = json.loads((card.ROOT / "calibration/boards/board.json").read_text())
    left, top = b["middle"]["u"] - (b["columns"] - 1) / 2 * b["pitch"], b["middle"]["v"] + (b["rows"] - 1) / 2 * b["pitch"]
    return {b["firstId"] + r * b["columns"] + c: (left + c * b["pitch"], top - r * b["pitch"]) for r in range(b["rows"]) for c in range(b["columns"])}, b["markerSide"] / 2


def linear(grey):
    """Light from the file's values (IEC 61966-2-1)."""
    v = grey.astype(np.float32) / 255
    return np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4).astype(np.float32)


def sample(light, x, y):
    return cv2.remap(light, x.astype(np.float32), y.astype(np.float32), cv2.INTER_CUBIC)


def side(light, a, b):
    """Parabola n = f(t) of the side from a to b, t along it and n outwards in px, by points where light passes the middle."""
    along = (b - a) / np.linalg.norm(b - a)
    out = np.array([along[1], -along[0]])
    n = np.arange(-REACH, REACH + STEP / 2, STEP)
    length = np.linalg.norm(b - a)
    t = PARTS * length
    p = (a + t[:, None] * along)[:, None, :] + n[None, :, None] * out
    if p.min() < 1 or (p[..., 0].max() > light.shape[1] - 2) or (p[..., 1].max() > light.shape[0] - 2):
        return None
    profile = sample(light, p[..., 0], p[..., 1])
    black, white = np.median(profile[:, :8], 1), np.median(profile[:, -8:], 1)
    where = []
    for i, row in enumerate(profile):
        level = (black[i] + white[i]) / 2
        k = np.flatnonzero((row[:-1] < level) & (row[1:] >= level))
        if white[i] - black[i] > 0.05 and len(k) == 1:
            where.append((t[i], n[k[0]] + STEP * (level - row[k[0]]) / (row[k[0] + 1] - row[k[0]])))
    where = np.array(where)
    if len(where) < 15:
        return None
    curve = np.polyfit(where[:, 0], where[:, 1], 2)
    rest = where[:, 1] - np.polyval(curve, where[:, 0])
    keep = np.abs(rest) < 4 * 1.4826 * np.median(np.abs(rest)) + 1e-6
    curve = np.polyfit(where[keep, 0], where[keep, 1], 2)
    return a, along, out, curve


def meet(first, second, near):
    """Where two sides meet."""
    p = near.copy()
    for _ in range(10):
        values, slopes = [], []
        for a, along, out, curve in (first, second):
            t = (p - a) @ along
            values.append((p - a) @ out - np.polyval(curve, t))
            slopes.append(out - np.polyval(np.polyder(curve), t) * along)
        p = p - np.linalg.solve(np.array(slopes), np.array(values))
    return p


def find(path):
    """Corners of a photo: id -> four points from the marker's own upper left, clockwise, and cornerSubPix's at the same place."""
    grey = cv2.imread(str(path), cv2.IMREAD_GRAYSCALE)
    light = linear(grey)
    parameters = cv2.aruco.DetectorParameters_create()
    parameters.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
    corners, ids, _ = cv2.aruco.detectMarkers(grey, cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50), parameters=parameters)
    known, _ = markers()
    fine, subpix = {}, {}
    for i, c in zip([] if ids is None else ids.ravel(), corners):
        c = c.reshape(4, 2).astype(float)
        sides = [side(light, c[k], c[(k + 1) % 4]) for k in range(4)] if int(i) in known else [None]
        if all(s is not None for s in sides):
            fine[int(i)] = np.array([meet(sides[k - 1], sides[k], c[k]) for k in range(4)])
            subpix[int(i)] = c
    return grey.shape[::-1], fine, subpix


def calibrate(views, size, spread):
    known, half = markers()
    def points(i):
        u, v = known[i]
        h = half + spread
        # OpenCV's board frame has y down, as the photo.
        return [(u - h, -(v + h), 0), (u + h, -(v + h), 0), (u + h, -(v - h), 0), (u - h, -(v - h), 0)]
    board = [np.array([p for i in sorted(v) for p in points(i)], np.float32) for v in views]
    seen = [np.vstack([v[i] for i in sorted(v)]).astype(np.float32) for v in views]
    criteria = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_MAX_ITER, 200, 1e-12)
    return cv2.calibrateCameraExtended(board, seen, size, None, None, criteria=criteria), board, seen


def spread_of(views, size):
    """The length, mm, by which corners moved outwards leave the least rms: a parabola through three trials, twice."""
    middle, step = 0.0, 0.04
    for _ in range(2):
        s = np.array([middle - step, middle, middle + step])
        squares = [calibrate(views, size, x)[0][0] ** 2 for x in s]
        a, b, _ = np.polyfit(s - middle, squares, 2)
        middle, step = middle - b / (2 * a), step / 4
    return float(middle)


if __name__ == "__main__":
    photos = sorted(FOLDER.glob("board-*.jpg"))
    found = {p.name: find(p) for p in photos}
    size = next(iter(found.values()))[0]
    views = [f[1] for f in found.values()]
    spread = spread_of(views, size)
    (rms, k, d, r, t, deviations, _, per_view), board, seen = calibrate(views, size, spread)
    values = [k[0, 0], k[1, 1], k[0, 2], k[1, 2], *d.ravel()[:5]]
    camera = {n: {"value": round(float(v), 7), "standardDeviation": round(float(s), 8)} for n, v, s in zip(TERMS, values, deviations.ravel()[:9])}
    inwards = []
    for i, (name, (_, fine, subpix)) in enumerate(found.items()):
        inwards += [np.mean([(subpix[m][c] - fine[m][c]) @ (fine[m].mean(0) - fine[m][c]) / np.linalg.norm(fine[m].mean(0) - fine[m][c]) for c in range(4)]) for m in fine]
    print({n: (c["value"], c["standardDeviation"]) for n, c in camera.items()}, "rms", rms, "spread", spread)
    card.PHOTOS = FOLDER
    card.write("opencv-board.json", {
        "by": "cv2.aruco.detectMarkers (DICT_4X4_50); corners where parabolas through the sides' half levels meet; cv2.calibrateCameraExtended",
        "opencv": cv2.__version__, "package": "python3-opencv " + card.package("python3-opencv"),
        "convention": "px; integer coordinates are pixel centres; corners clockwise from the marker's own upper left",
        "camera": camera, "rmsPx": round(float(rms), 5), "spreadMm": round(spread, 5),
        "cornerSubPixInwardsPx": round(float(np.mean(inwards)), 4)},
        {name: {"rmsPx": round(float(e), 5), "markers": {m: card.rounded(c, 3) for m, c in sorted(f[1].items())}}
         for (name, f), e in zip(found.items(), per_view.ravel())})
