"""A pinhole camera looking at a flat or slightly bent card. Pixel centres lie at integer coordinates; lengths are in mm."""
import cv2
import numpy as np


def rotation(axis, degrees):
    """Rotation matrix about an axis."""
    axis = np.asarray(axis, float)
    return cv2.Rodrigues(axis / np.linalg.norm(axis) * np.radians(degrees))[0]


class Camera:
    """Camera axes: x right, y down, z away. The card's (u, v) is the point (u, -v, 0) before the pose is applied."""

    def __init__(self, width, height, focal, scale, tilt, towards, roll, place, distortion=0.0, sagitta=0.0, bend=0.0):
        """`scale` px/mm at the card's centre; `place` of that centre in px; angles in degrees, `tilt` to the line of sight; `distortion` at the photo's corner as a
        share of the radius; `sagitta` of the card over 50 mm along the direction `bend`, positive when the middle stands out."""
        self.width, self.height, self.focal = width, height, focal
        self.middle = np.array([(width - 1) / 2, (height - 1) / 2])
        self.rotation = rotation((0, 0, 1), roll) @ rotation((np.cos(np.radians(towards)), np.sin(np.radians(towards)), 0), tilt)
        self.distortion, self.corner = distortion, np.hypot(width, height) / 2 / focal
        self.curve, self.bend = sagitta / 25**2, np.radians(bend)
        ray = np.append(self._undistort(*((np.asarray(place, float) - self.middle) / focal)), 1)
        self.shift = ray * focal / scale
        aside = np.degrees(np.arctan(np.hypot(ray[0], ray[1])))
        self.rotation = rotation((-ray[1], ray[0] + 1e-12, 0), aside) @ self.rotation

    def _undistort(self, x, y):
        if not self.distortion:
            return x, y
        seen = np.hypot(x, y)
        true = seen.copy() if isinstance(seen, np.ndarray) else seen
        k = self.distortion / self.corner**2
        for _ in range(8):
            true = true - (true * (1 + k * true**2) - seen) / (1 + 3 * k * true**2)
        share = true / np.maximum(seen, 1e-12)
        return x * share, y * share

    def project(self, u, v):
        """Pixels of points on the flat plane."""
        p = self.rotation @ np.stack([u, -np.asarray(v), np.zeros_like(u)]) + self.shift[:, None]
        x, y = p[0] / p[2], p[1] / p[2]
        far = 1 + self.distortion * (x**2 + y**2) / self.corner**2
        return x * far * self.focal + self.middle[0], y * far * self.focal + self.middle[1]

    def plane(self, x, y):
        """Where the rays through pixels meet the flat plane."""
        return self._meet(*self._rays(x, y), 0.0)

    def card(self, x, y):
        """The printed coordinates of the card seen at pixels. On a bent card they are arc lengths from its centre."""
        rays = self._rays(x, y)
        u, v = self._meet(*rays, 0.0)
        if not self.curve:
            return u, v
        c, s = np.cos(self.bend), np.sin(self.bend)
        for _ in range(8):
            u, v = self._meet(*rays, -self.curve * np.clip(u * c + v * s, -40, 40) ** 2)
        along, across = u * c + v * s, v * c - u * s
        along = along + 2 / 3 * self.curve**2 * along**3
        return along * c - across * s, along * s + across * c

    def _rays(self, x, y):
        return self._undistort((x - self.middle[0]) / self.focal, (y - self.middle[1]) / self.focal)

    def _meet(self, x, y, height):
        (a, b, n), t = self.rotation.T, self.shift
        far = (n @ t - height) / np.maximum(n[0] * x + n[1] * y + n[2], 1e-3)
        return a[0] * x * far + a[1] * y * far + a[2] * far - a @ t, b @ t - (b[0] * x * far + b[1] * y * far + b[2] * far)


def sample(picture, density, u, v):
    """Bilinear values of a flat picture, its centre at (0, 0), `density` px/mm."""
    rows, columns = picture.shape[:2]
    x = (u * density + (columns - 1) / 2).astype(np.float32)
    y = ((rows - 1) / 2 - v * density).astype(np.float32)
    return cv2.remap(picture, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REFLECT_101)


def photograph(camera, background, layers):
    """Renders the background once per pixel, and all layers on it with as many samples per pixel as the densest one needs.

    `background` and each layer: (RGB picture, alpha or None, px/mm, turn in degrees, shift (u, v) of its centre, bent with the card)."""
    y, x = np.mgrid[:camera.height, :camera.width].astype(np.float64)
    u, v = camera.plane(x, y)
    photo = _laid(background, u, v)[0]
    for layer in layers:
        picture, density = layer[0], layer[2]
        half = (picture.shape[0] - 1) / 2 / density
        edge = np.linspace(-half, half, 25)
        ends = np.full_like(edge, half)
        box = _turned(layer, np.concatenate([edge, edge, ends, -ends]), np.concatenate([ends, -ends, edge, edge]), back=True)
        px, py = camera.project(*box)
        left, right = np.clip([px.min() - 12, px.max() + 12], 0, camera.width).astype(int)
        top, bottom = np.clip([py.min() - 12, py.max() + 12], 0, camera.height).astype(int)
        if right <= left or bottom <= top:
            continue
        n = int(np.clip(np.ceil(density * camera.shift[2] / camera.focal * 1.2), 2, 6))
        columns = left + (np.arange((right - left) * n) + 0.5) / n - 0.5
        for row in range(top, bottom, 64):
            last = min(row + 64, bottom)
            sy, sx = np.meshgrid(row + (np.arange((last - row) * n) + 0.5) / n - 0.5, columns, indexing="ij")
            colour, alpha = _laid(layer, *(camera.card(sx, sy) if layer[5] else camera.plane(sx, sy)))
            share = _mean(alpha, n)[..., None]
            photo[row:last, left:right] = photo[row:last, left:right] * (1 - share) + _mean(colour * alpha[..., None], n)
    return photo, u.astype(np.float32), v.astype(np.float32)


def _turned(layer, u, v, back=False):
    turn, shift = np.radians(layer[3]), layer[4]
    c, s = np.cos(turn), np.sin(turn)
    if back:
        return u * c - v * s + shift[0], u * s + v * c + shift[1]
    u, v = u - shift[0], v - shift[1]
    return u * c + v * s, v * c - u * s


def _laid(layer, u, v):
    u, v = _turned(layer, u, v)
    colour = sample(layer[0], layer[2], u, v)
    if layer[1] is None:
        return colour, None
    half = (layer[0].shape[0] - 1) / 2 / layer[2]
    return colour, sample(layer[1], layer[2], u, v) * ((np.abs(u) <= half) & (np.abs(v) <= half))


def _mean(picture, n):
    rows, columns = picture.shape[0] // n, picture.shape[1] // n
    return picture.reshape(rows, n, columns, n, *picture.shape[2:]).mean(axis=(1, 3), dtype=np.float32)
