#!/usr/bin/python3
"""Marker corners, saddle points and homographies of the fixture photos by OpenCV's own detector, as Debian packages it.

Independent of MarkReader: another version of OpenCV, its corner refinement (Förstner & Gülch 1987, as cornerSubPix has it), a plain
homography by least squares. Needs python3-opencv. Writes fixtures/crosscheck/opencv-corners.json.
"""
import json

import cv2
import numpy as np

import card

CRITERIA = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_MAX_ITER, 60, 0.002)


def find(grey):
    """The card in a picture: markers, saddle points, homography card mm -> px; None when fewer than three markers are seen."""
    parameters = cv2.aruco.DetectorParameters_create()
    parameters.cornerRefinementMethod = cv2.aruco.CORNER_REFINE_SUBPIX
    corners, ids, _ = cv2.aruco.detectMarkers(grey, cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50), parameters=parameters)
    seen = {} if ids is None else {int(i): c.reshape(4, 2).astype(float) for i, c in zip(ids.ravel(), corners)}
    kind = max(card.kinds().values(), key=lambda k: sum(m["id"] in seen for m in k["markers"]))
    markers = [m for m in kind["markers"] if m["id"] in seen]
    if len(markers) < 3:
        return None
    mm = np.array([c for m in markers for c in card.marker_corners(kind, m)])
    px = np.vstack([seen[m["id"]] for m in markers])
    first, _ = cv2.findHomography(mm, px, cv2.RANSAC, 4)
    inner = np.array(card.saddles(kind))
    guess = card.project(first, inner)
    # A window of two fifths of a square's shorter side in the picture holds no second corner.
    square = min(np.linalg.norm(card.project(first, inner + d) - guess, axis=1).min() for d in ([kind["square"], 0], [0, kind["square"]]))
    window = int(np.clip(0.4 * square, 3, 15))
    fine = cv2.cornerSubPix(grey, guess.astype(np.float32).reshape(-1, 1, 2), (window, window), (-1, -1), CRITERIA).reshape(-1, 2).astype(float)
    homography, kept = cv2.findHomography(inner, fine, cv2.RANSAC, 1.5)
    kept = kept.ravel().astype(bool)
    homography, _ = cv2.findHomography(inner[kept], fine[kept], 0)
    residual = np.sqrt(np.mean(np.sum((card.project(homography, inner[kept]) - fine[kept]) ** 2, axis=1)))
    return {"kind": kind["name"], "markers": {m["id"]: card.rounded(seen[m["id"]], 3) for m in markers},
            "saddles": [{"u": u, "v": v, "x": x, "y": y} for (u, v), (x, y) in zip(inner[kept].tolist(), card.rounded(fine[kept], 3))],
            "homography": homography.tolist(), "residualPx": round(float(residual), 4)}


def draw(kind, homography, width, height, samples=6):
    """A picture of a card by area sampling, pixel (0, 0) reaching from -0.5 to 0.5, slightly blurred and noisy."""
    scale, half = 60, kind["outerSide"] / 2
    ink = np.full((int(2 * half * scale),) * 2, 230, np.uint8)
    def fill(u0, v0, u1, v1, grey=20):
        ink[round((half - v1) * scale):round((half - v0) * scale), round((u0 + half) * scale):round((u1 + half) * scale)] = grey
    dictionary = json.loads((card.ROOT / "calibration/dictionaries/aruco-4x4-50.json").read_text())["markers"]
    for m in kind["markers"]:
        (u, v), cell = card.marker_corners(kind, m)[0], kind["markerSide"] / 6
        fill(u, v - 6 * cell, u + 6 * cell, v)
        for r, row in enumerate(dictionary[str(m["id"])]):
            for c, white in enumerate(row):
                if white == "1":
                    fill(u + (c + 1) * cell, v - (r + 2) * cell, u + (c + 2) * cell, v - (r + 1) * cell, 230)
    for p in kind["patches"]:
        s = kind["square"]
        for r in range(p["rows"]):
            for c in range(p["columns"]):
                if ((r + c) % 2 == 0) == p["firstBlack"]:
                    fill(p["u"] + c * s, p["v"] - (r + 1) * s, p["u"] + (c + 1) * s, p["v"] - r * s)
    back = np.linalg.inv(homography)
    total = np.zeros((height, width))
    y, x = np.mgrid[0:height, 0:width]
    for i in range(samples):
        for j in range(samples):
            q = np.stack([x + (i + 0.5) / samples - 0.5, y + (j + 0.5) / samples - 0.5, np.ones_like(x)], -1) @ back.T
            column, row = (q[..., 0] / q[..., 2] + half) * scale, (half - q[..., 1] / q[..., 2]) * scale
            inside = (column >= 0) & (row >= 0) & (column < ink.shape[1]) & (row < ink.shape[0])
            total += np.where(inside, ink[np.clip(row, 0, ink.shape[0] - 1).astype(int), np.clip(column, 0, ink.shape[1] - 1).astype(int)], 150)
    blurred = cv2.GaussianBlur(total / samples ** 2, (0, 0), 1.0)
    return np.clip(blurred + np.random.default_rng(7).normal(0, 2, blurred.shape), 0, 255).round().astype(np.uint8)


def bias():
    """Mean error in x and y, and the rms, of marker corners and saddle points in a drawn picture, px: shows the pixel convention."""
    kind = card.kinds()["plate"]
    truth = np.array([[15.3, 1.9, 620.37], [1.4, -15.9, 455.71], [0.0011, -0.0007, 1]])
    found = find(draw(kind, truth, 1240, 920))
    corners = np.vstack([np.array(found["markers"][m["id"]]) - card.project(truth, card.marker_corners(kind, m)) for m in kind["markers"]])
    inner = np.array([[s["x"], s["y"]] for s in found["saddles"]]) - card.project(truth, [[s["u"], s["v"]] for s in found["saddles"]])
    def summary(e):
        return {"count": len(e), "meanX": round(e[:, 0].mean(), 4), "meanY": round(e[:, 1].mean(), 4), "rms": round(float(np.sqrt((e ** 2).sum(1).mean())), 4)}
    return {"markerCorners": summary(corners), "saddles": summary(inner)}


if __name__ == "__main__":
    cv2.setRNGSeed(1)
    results = {}
    for photo, truth in card.photos():
        if "expected" in truth:
            continue
        grey = cv2.imread(str(photo), cv2.IMREAD_GRAYSCALE)
        results[photo.name] = find(grey) if grey is not None else None
        print(photo.name, results[photo.name] and (len(results[photo.name]["markers"]), results[photo.name]["residualPx"]), flush=True)
    card.write("opencv-corners.json", {
        "by": "cv2.aruco.detectMarkers (DICT_4X4_50, CORNER_REFINE_SUBPIX), cv2.cornerSubPix, cv2.findHomography",
        "opencv": cv2.__version__, "package": "python3-opencv " + card.package("python3-opencv"),
        "convention": "px; integer coordinates are pixel centres; corners clockwise from the marker's own upper left; homography: card frame (mm) to px",
        "biasOnADrawnPicture": bias()}, results)
