#!/usr/bin/python3
"""Centroids of the marks in the fixture photos by scikit-image's regionprops, in the card frame.

Independent of MarkReader from the photo on: OpenCV's homography (corners.py), a plain rectified patch, a threshold at half depth, region
centroids. The truth file only says near which place to look. Needs python3-opencv and python3-skimage; run corners.py first.
Writes fixtures/crosscheck/skimage-centroids.json.
"""
import json

import cv2
import numpy as np
import skimage
from scipy import ndimage
from skimage import filters, measure

import card

PX_PER_MM = 30


def light(grey):
    """Linear light, 0 to 1, from the sRGB values of a photo (IEC 61966-2-1)."""
    s = grey.astype(float) / 255
    return np.where(s <= 0.04045, s / 12.92, ((s + 0.055) / 1.055) ** 2.4)


def rectify(grey, homography, side):
    """The middle of the card, seen straight on. Patch pixel (i, j) has its centre at u = (i + 0.5) / k - side / 2, v = side / 2 - (j + 0.5) / k."""
    k, size = PX_PER_MM, int(side * PX_PER_MM)
    patch_to_card = np.array([[1 / k, 0, 0.5 / k - side / 2], [0, -1 / k, side / 2 - 0.5 / k], [0, 0, 1]])
    flags = cv2.INTER_CUBIC | cv2.WARP_INVERSE_MAP
    return cv2.warpPerspective(light(grey), np.asarray(homography) @ patch_to_card, (size, size), flags=flags)


def darkening(patch):
    """1 - light / background; the background is a quadratic surface fitted to the bright part of the patch."""
    y, x = np.mgrid[-1:1:patch.shape[0] * 1j, -1:1:patch.shape[1] * 1j]
    terms = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y], -1)
    small, t = filters.gaussian(patch, 3)[::8, ::8].ravel(), terms[::8, ::8].reshape(-1, 6)
    keep = np.ones(small.size, bool)
    for _ in range(8):
        c, *_ = np.linalg.lstsq(t[keep], small[keep], rcond=None)
        residual = small - t @ c
        spread = 1.4826 * np.median(np.abs(residual[keep] - np.median(residual[keep])))
        keep = np.abs(residual) < 2.5 * spread
    return 1 - patch / (terms @ c)


def centroid(dark, side, mark, others):
    """The region at half depth about a mark; a reason instead when there is none of its own."""
    k = PX_PER_MM
    smooth = filters.gaussian(dark, 0.06 * k)
    column, row = (mark["u"] + side / 2) * k - 0.5, (side / 2 - mark["v"]) * k - 0.5
    y, x = np.ogrid[0:dark.shape[0], 0:dark.shape[1]]
    near = np.hypot(x - column, y - row) < 0.5 * mark["diameter"] * k
    if not near.any():
        return {"skipped": "outside the zone"}
    depth = float(np.percentile(smooth[near], 90))
    labels = measure.label(ndimage.binary_fill_holes(ndimage.binary_opening(smooth > depth / 2, iterations=int(0.15 * k))))
    counts = np.bincount(labels[near], minlength=2)[1:]
    if counts.max(initial=0) == 0:
        return {"skipped": "no region"}
    region = measure.regionprops(labels, intensity_image=np.clip(dark, 0, None))[int(counts.argmax())]
    for other in others:
        c, r = int((other["u"] + side / 2) * k), int((side / 2 - other["v"]) * k)
        if 0 <= c < labels.shape[1] and 0 <= r < labels.shape[0] and labels[r, c] == region.label:
            return {"skipped": "joined to another mark"}
    def frame(rc):
        return {"u": round((rc[1] + 0.5) / k - side / 2, 5), "v": round(side / 2 - (rc[0] + 0.5) / k, 5)}
    return {"centroid": frame(region.centroid), "weightedCentroid": frame(region.centroid_weighted if hasattr(region, "centroid_weighted") else region.weighted_centroid),
            "diameter": round(float(np.sqrt(4 * region.area / np.pi)) / k, 4), "solidity": round(float(region.solidity), 4), "depth": round(depth, 4)}


if __name__ == "__main__":
    found = json.loads((card.RESULTS / "opencv-corners.json").read_text())["photos"]
    kinds, results, errors = card.kinds(), {}, []
    for photo, truth in card.photos():
        view = found.get(photo.name)
        if view is None or not truth["marks"]:
            continue
        grey, side = cv2.imread(str(photo), cv2.IMREAD_GRAYSCALE), kinds[view["kind"]]["zoneSide"]
        dark = darkening(rectify(grey, view["homography"], side))
        results[photo.name] = [centroid(dark, side, m, [o for o in truth["marks"] if o is not m]) for m in truth["marks"]]
        for mark, result in zip(truth["marks"], results[photo.name]):
            e = [np.hypot(result[c]["u"] - mark["u"], result[c]["v"] - mark["v"]) if c in result else np.nan for c in ("centroid", "weightedCentroid")]
            errors.append(e)
            print(photo.name, result.get("skipped", ""), "from truth: %.4f %.4f" % tuple(e), result.get("solidity"), result.get("diameter"), mark["diameter"], flush=True)
    print("rms from truth, mm: %.4f %.4f" % tuple(np.sqrt(np.nanmean(np.square(errors), axis=0))))
    card.write("skimage-centroids.json", {
        "by": "OpenCV homography, cubic patch of %d px/mm in linear light, quadratic background, half depth, skimage.measure.regionprops" % PX_PER_MM,
        "skimage": skimage.__version__, "opencv": cv2.__version__,
        "package": "python3-skimage " + card.package("python3-skimage"),
        "convention": "mm in the card frame; one entry per mark of the truth file, in its order, which only says near which place to look"}, results)
