import { PhotoQueue } from "./queue.js";

// Photos of a study: a form for each person or phone, sent one after the other.
export function connectStudy(root) {
  const forms = root.querySelectorAll("form[data-photos]");
  if (forms.length) new PhotoQueue(forms, `/api/studies/${root.dataset.study}/photos`, "photos");
}
