"""Parts of the second scene maker: camera, textures, marks, the target's picture, and what light and camera add."""
