import { connectViews } from "./view.js";

// Says that the result shown no longer belongs to what the form holds.
export function setStale(stale) {
  const shown = document.querySelector("#outcome .aim") !== null;
  document.getElementById("stale").hidden = !(stale && shown);
  document.getElementById("outcome").classList.toggle("stale", stale && shown);
}

// Fetches a result as the server draws it, puts it on the page and leads the reader there.
export async function showOutcome(id) {
  const answer = await fetch(`/results/${id}?handler=Panel`);
  const outcome = document.getElementById("outcome");
  outcome.innerHTML = await answer.text();
  connectViews(outcome);
  setStale(false);
  outcome.scrollIntoView({ block: "start", behavior: "auto" });
  outcome.focus({ preventScroll: true });
  const list = await fetch("/?handler=Earlier");
  if (list.ok) document.getElementById("earlier-list").innerHTML = await list.text();
}
