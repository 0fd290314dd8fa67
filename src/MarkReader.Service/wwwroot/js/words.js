// Words that scripts say, which the page gives in the reader's language.
export const words = document.getElementById("script-words").dataset;

// The text with its parts in place of {0}, {1} …
export function fill(text, ...parts) {
  return text.replace(/\{(\d)\}/g, (_, index) => String(parts[index]));
}

export function tooLarge(file, limit) {
  return { detail: fill(words.tooLarge, (file.size / 1048576).toFixed(0), limit / 1048576), hint: words.tooLargeHint };
}

export function tooLargeTogether(files, limit) {
  const sum = files.reduce((all, file) => all + file.size, 0);
  return { detail: fill(words.tooLargeTogether, files.length, Math.ceil(sum / 1048576), limit / 1048576), hint: words.tooLargeTogetherHint };
}

const inches = words.display.startsWith("in"), comma = words.display.endsWith("comma");

// A number's text with the reader's decimal sign.
export const sign = (text) => comma ? text.replace(".", ",") : text;

// A length in the reader's unit.
export const length = (millimetres, decimals) => sign(inches ? (millimetres / 25.4).toFixed(decimals + 2) : millimetres.toFixed(decimals)) + "\u00a0" + (inches ? "in" : "mm");
