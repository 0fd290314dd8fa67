import { onFiles } from "./files.js";
import { showError, clearError } from "./errors.js";
import { tooLargeTogether } from "./words.js";

// What a form says beside each of its files, and about itself, bytes.
const beside = 1024, about = 16384;

// A form that sends its photos all at once: photos that are too much together are refused before they are sent, so that nothing entered is lost.
export function connectSizes(form) {
  const input = form.querySelector("input[type=file]"), limit = Number(form.dataset.together);

  onFiles(input, look);
  form.addEventListener("submit", (e) => {
    if (look()) return;
    e.preventDefault();
    e.stopImmediatePropagation();
    input.focus();
  });

  // Whether the photos may be sent.
  function look() {
    const files = [...input.files], sum = files.reduce((all, file) => all + file.size + beside, about);
    if (sum <= limit) {
      clearError(input.id);
      return true;
    }
    showError(input.id, tooLargeTogether(files, limit));
    return false;
  }
}
