// Files of an input: those that are chosen, and those that were chosen before this script had loaded.
export function onFiles(input, take) {
  const look = () => { if (input.files.length) take([...input.files]); };
  input.addEventListener("change", look);
  queueMicrotask(look); // once whoever asks is ready
}
