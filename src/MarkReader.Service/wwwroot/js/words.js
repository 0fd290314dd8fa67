// Words that scripts say, which the page gives in the reader's language.
export const words = document.getElementById("script-words").dataset;

// The text with its parts in place of {0}, {1} …
export function fill(text, ...parts) {
  return text.replace(/\{(\d)\}/g, (_, index) => String(parts[index]));
}

export function tooLarge(file, limit) {
  return { detail: fill(words.tooLarge, (file.size / 1048576).toFixed(0), limit / 1048576), hint: words.tooLargeHint };
}
