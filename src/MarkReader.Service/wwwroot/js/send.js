import { words, fill } from "./words.js";

// Sends a request; the answer is always an object: { ok, status, body, problem }.
export function send(method, address, body = null, onProgress = null) {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open(method, address);
    request.setRequestHeader("Accept", "application/json");
    request.setRequestHeader("MarkReader-Display", "reader"); // refusals in the reader's unit
    request.responseType = "text";
    if (onProgress) {
      request.upload.addEventListener("progress", (e) => { if (e.lengthComputable) onProgress(e.loaded / e.total); });
      request.upload.addEventListener("load", () => onProgress(1));
    }
    request.addEventListener("load", () => resolve(read(request)));
    request.addEventListener("error", () => resolve(refusal(0, words.noAnswer, words.noAnswerHint)));
    request.send(body);
  });
}

function read(request) {
  const ok = request.status >= 200 && request.status < 300;
  let body = null;
  try { body = request.responseText ? JSON.parse(request.responseText) : null; } catch { /* not JSON: answered below */ }
  if (ok) return { ok, status: request.status, body, problem: null };
  if (body?.code) return { ok, status: request.status, body, problem: body };
  return refusal(request.status, fill(words.status, request.status), words.again);
}

function refusal(status, detail, hint) {
  return { ok: false, status, body: null, problem: { code: "", detail, hint } };
}
