import { send } from "./send.js";
import { onFiles } from "./files.js";
import { sentence } from "./errors.js";

// Takes in a whole visit from another installation: its file is sent as it is, with progress.
export function connectImport(form) {
  const input = form.querySelector("input"), status = document.getElementById("import-status"), error = document.getElementById("import-error");
  onFiles(input, async ([file]) => {
    error.replaceChildren();
    status.className = "slot-status busy";
    status.textContent = status.dataset.sending;
    const answer = await send("POST", "/api/visits/bundles", new Blob([file], { type: "application/zip" }), (part) => { status.textContent = `${status.dataset.sending} ${Math.round(part * 100)} %`; });
    status.className = "slot-status";
    status.textContent = "";
    input.value = "";
    if (answer.ok) return location.assign(`/visits/${answer.body.id}?taken=${answer.status === 201 ? "in" : "before"}`);
    const what = document.createElement("strong");
    what.textContent = sentence(answer.problem.detail);
    error.append(what, sentence(answer.problem.hint ?? ""));
  });
}
