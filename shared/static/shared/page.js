// Small behaviours, each attached by a data attribute; every page works without them.
(() => {
  "use strict";

  // after a failed save, the list of what needs mending is read first
  const errors = document.querySelector("[data-focus]");
  if (errors) errors.focus();

  // selects marked data-send submit their form when changed
  document.addEventListener("change", (event) => {
    const form = event.target.closest("form[data-send]");
    if (form) form.requestSubmit();
  });

  // a part that only matters while another field is empty
  for (const part of document.querySelectorAll("[data-only-without]")) {
    const other = document.getElementById(part.dataset.onlyWithout);
    const show = () => { part.hidden = other.value !== ""; };
    other.addEventListener("change", show);
    show();
  }

  // when the server does not answer, say so in the status line
  const say = (words) => {
    const status = document.getElementById("status");
    const line = document.createElement("p");
    line.className = "message error";
    line.textContent = words;
    status.replaceChildren(line);
  };
  document.body.addEventListener("htmx:responseError", () => say("The page could not be brought up to date. Reload it to try again."));
  document.body.addEventListener("htmx:sendError", () => say("The program does not answer. Is it still running?"));

  // a tap on a panel drawing fills in the place: data-place names the form's fields
  document.addEventListener("click", (event) => {
    const drawing = event.target.closest("svg[data-place]");
    if (!drawing) return;
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.querySelector("[data-frame]").getScreenCTM().inverse());
    const perUnit = Number(drawing.dataset.perUnit);
    const next = [...document.querySelectorAll("[data-across]")].find((field) => !field.value) || document.querySelector("[data-across]");
    if (!next) return;
    const up = document.getElementById(next.dataset.across);
    next.value = (spot.x / perUnit).toFixed(1);
    up.value = (spot.y / perUnit).toFixed(1);
    next.dispatchEvent(new Event("change", { bubbles: true }));
  });
})();
