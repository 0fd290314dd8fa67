// A leg's travel follows its paths, and its far path a travel that is typed. Without this the service does the same when the form is sent.

const read = (field) => {
  const text = field.value.trim().replace(",", ".");
  return /^\d*\.?\d+$|^\d+\.$/.test(text) ? Number(text) : NaN;
};

export function connectPaths(form) {
  const comma = form.elements.display?.value.endsWith("comma");
  const write = (field, value) => {
    if (!Number.isFinite(value) || value <= 0) return;
    const text = String(Math.round(value * 1e4) / 1e4);
    field.value = comma ? text.replace(".", ",") : text;
  };
  for (const leg of ["leg1", "leg2", "leg3"]) {
    const [near, far, travel] = ["nearPath", "farPath", "travel"].map((name) => form.elements[`${leg}-${name}`]);
    if (!travel) continue;
    const measured = () => write(travel, read(far) - read(near));
    near.addEventListener("input", measured);
    far.addEventListener("input", measured);
    travel.addEventListener("input", () => write(far, read(near) + read(travel)));
  }
}
