"""What light, lens, sensor and file do to the rendered photo. Values are 0 to 1, in sRGB or in linear light as the scene says."""
import cv2
import numpy as np
from PIL import Image


def to_linear(picture):
    """sRGB values to linear light (IEC 61966-2-1)."""
    p = np.asarray(picture, np.float32)
    return np.where(p <= 0.04045, p / 12.92, ((np.maximum(p, 0) + 0.055) / 1.055) ** 2.4).astype(np.float32)


def to_srgb(picture):
    """Linear light to sRGB values (IEC 61966-2-1)."""
    p = np.clip(picture, 0, 1)
    return np.where(p <= 0.0031308, p * 12.92, 1.055 * p ** (1 / 2.4) - 0.055).astype(np.float32)


def uneven(photo, rng, strength):
    """A gentle slope of light, darker corners, and the lamp's tint."""
    rows, columns = photo.shape[:2]
    y, x = np.mgrid[:rows, :columns].astype(np.float32)
    x, y = x / columns - 0.5, y / rows - 0.5
    turn = rng.uniform(0, 2 * np.pi)
    field = 1 + strength * (x * np.cos(turn) + y * np.sin(turn)) - rng.uniform(0, 0.5) * (x**2 + y**2)
    tint = np.float32([1 + rng.uniform(-0.03, 0.04), 1, 1 + rng.uniform(-0.07, 0.03)])
    return photo * field[..., None] * tint


def shadow(photo, u, v, rng, through, linear):
    """A hard shadow whose edge runs through a point of the card."""
    turn, soft = rng.uniform(0, 2 * np.pi), rng.uniform(0.08, 0.5)
    side = (u - through[0]) * np.cos(turn) + (v - through[1]) * np.sin(turn)
    lit = np.clip(0.5 + side / soft, 0, 1)
    lit = lit * lit * (3 - 2 * lit)
    dark = rng.uniform(0.4, 0.68)
    dark = dark**2.2 if linear else dark
    return photo * (dark + (1 - dark) * lit)[..., None]


def glare(photo, u, v, rng, linear):
    """A lamp's reflection that washes out about half the free zone and keeps a third of the contrast there."""
    turn, strength = rng.uniform(0, 2 * np.pi), rng.uniform(0.5, 0.72)
    a, b = u * np.cos(turn) + v * np.sin(turn), v * np.cos(turn) - u * np.sin(turn)
    offset, width = rng.uniform(8, 12), rng.uniform(7, 10)
    spot = np.exp(-((a - offset) / width) ** 4 - ((b - rng.uniform(-5, 5)) / rng.uniform(16, 26)) ** 2)[..., None]
    if linear:
        return photo + 0.7 * strength * spot
    return 1 - (1 - photo) * (1 - strength * spot)


def disc(radius):
    """Kernel of a defocused lens; the edge is antialiased, the middle is its centre."""
    half = int(np.ceil(radius)) + 1
    y, x = np.mgrid[-half:half + 1, -half:half + 1]
    kernel = np.clip(radius + 0.5 - np.hypot(x, y), 0, 1)
    return kernel / kernel.sum()


def line(length, degrees):
    """Kernel of a steady motion during the exposure; the truth is the middle of the way."""
    half = int(np.ceil(length / 2)) + 2
    kernel = np.zeros((2 * half + 1, 2 * half + 1))
    for s in np.linspace(-length / 2, length / 2, 400):
        x, y = half + s * np.cos(np.radians(degrees)), half + s * np.sin(np.radians(degrees))
        i, j = int(y), int(x)
        a, b = y - i, x - j
        kernel[i:i + 2, j:j + 2] += np.outer([1 - a, a], [1 - b, b])
    return kernel / kernel.sum()


def blur(photo, kernel):
    """Convolution; the kernels are point symmetric, so nothing moves."""
    return cv2.filter2D(photo, -1, kernel.astype(np.float32), borderType=cv2.BORDER_REFLECT_101)


def sensor(photo, rng, linear, amount):
    """Noise: shot and read noise in linear light, plain Gaussian in sRGB; at times grainy, as after a camera's own filter."""
    grain = rng.standard_normal(photo.shape).astype(np.float32)
    if rng.random() < 0.4:
        grain = cv2.GaussianBlur(grain, (0, 0), 0.55) * 1.6
    if linear:
        return photo + grain * np.sqrt(np.maximum(photo, 0) * amount**2 * 1.5 + (0.25 * amount) ** 2)
    return photo + grain * amount


def sharpened(photo, rng):
    """The unsharp mask that many phones apply."""
    return photo + rng.uniform(0.2, 0.6) * (photo - cv2.GaussianBlur(photo, (0, 0), rng.uniform(0.8, 1.6)))


def save(photo, path, form, rng):
    """Writes the photo (sRGB, 0 to 1) as jpg, webp, png, grey, cmyk, png16 or alpha; answers the file's name."""
    photo = np.clip(photo, 0, 1)
    suffix = {"webp": ".webp", "png": ".png", "png16": ".png", "alpha": ".png"}.get(form, ".jpg")
    path = path.with_name(path.name + suffix)
    if form == "png16":
        cv2.imwrite(str(path), np.uint16(photo[..., ::-1] * 65535 + 0.5), [cv2.IMWRITE_PNG_COMPRESSION, 3])
        return path
    image = Image.fromarray(np.uint8(photo * 255 + 0.5))
    if form == "alpha":
        rows, columns = photo.shape[:2]
        alpha = np.full((rows, columns), 255, np.uint8)
        if rng.random() < 0.5:
            rim = columns // 60
            inside = np.zeros_like(alpha)
            inside[rim:-rim, rim:-rim] = 255
            alpha = cv2.GaussianBlur(inside, (0, 0), rim / 4)
        image.putalpha(Image.fromarray(alpha))
        image.save(path, compress_level=3)
    elif form == "png":
        image.save(path, compress_level=3)
    elif form == "webp":
        image.save(path, quality=int(rng.integers(80, 96)), method=2)
    else:
        mode = {"grey": "L", "cmyk": "CMYK"}.get(form, "RGB")
        image.convert(mode).save(path, quality=int(rng.integers(82, 97)))
    return path
