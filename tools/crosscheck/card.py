"""The card kinds of calibration/ as points in millimetres, and the bookkeeping that the cross-check scripts share."""
import datetime
import hashlib
import json
import pathlib
import platform
import subprocess
import sys

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
PHOTOS = ROOT / "fixtures" / "photos"
RESULTS = ROOT / "fixtures" / "crosscheck"


def kinds():
    """Card kinds by name."""
    return {k["name"]: k for k in (json.loads(p.read_text()) for p in sorted((ROOT / "calibration" / "cards").glob("*.json")))}


def marker_corners(kind, marker):
    """Corners of a marker's black square, clockwise from its own upper left, as OpenCV returns them."""
    u, v, h = marker["u"], marker["v"], kind["markerSide"] / 2
    return [(u - h, v + h), (u + h, v + h), (u + h, v - h), (u - h, v - h)]


def saddles(kind):
    """The inner corners of the chessboard patches, where two black and two white squares meet."""
    s = kind["square"]
    return [(p["u"] + c * s, p["v"] - r * s) for p in kind["patches"] for r in range(1, p["rows"]) for c in range(1, p["columns"])]


def project(homography, points):
    """Applies a 3 x 3 matrix to points."""
    p = np.hstack([np.asarray(points, float), np.ones((len(points), 1))]) @ np.asarray(homography).T
    return p[:, :2] / p[:, 2:]


def photos():
    """Every fixture photo with its truth."""
    for truth in sorted(PHOTOS.glob("*.truth.json")):
        name = truth.name.removesuffix(".truth.json")
        photo = next(p for p in sorted(PHOTOS.glob(name + ".*")) if not p.name.endswith(".json"))
        yield photo, json.loads(truth.read_text())


def package(name):
    """Version of a Debian package."""
    return subprocess.run(["dpkg-query", "-W", "-f", "${Version}", name], capture_output=True, text=True, check=True).stdout


def rounded(values, digits):
    """Nested lists of numbers, rounded so that the files stay readable."""
    return np.round(np.asarray(values, float), digits).tolist()


def write(name, made, photos_found):
    """Stores the values with how they were made."""
    RESULTS.mkdir(parents=True, exist_ok=True)
    digests = {p: hashlib.sha256((PHOTOS / p).read_bytes()).hexdigest() for p in photos_found}
    head = {"date": datetime.date.today().isoformat(), "command": f"/usr/bin/python3 tools/crosscheck/{pathlib.Path(sys.argv[0]).name}",
            "python": platform.python_version(), **made, "sha256": digests}
    lines = [f"    {json.dumps(photo)}: {json.dumps(found)}" for photo, found in photos_found.items()]
    text = "{\n  \"made\": " + json.dumps(head, indent=2).replace("\n", "\n  ") + ",\n  \"photos\": {\n" + ",\n".join(lines) + "\n  }\n}\n"
    json.loads(text)
    (RESULTS / name).write_text(text)
    print(f"{RESULTS / name}: {len(photos_found)} photos")
