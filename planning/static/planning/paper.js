// Drawing a piece on squared paper: points are set, dragged and nudged; the form's rows stay the truth.
(() => {
  "use strict";
  const form = document.querySelector("[data-paper-form]");
  if (!form) return;
  const sketch = document.getElementById("sketch");
  let held = null;
  let lastRow = null;

  const paper = () => sketch.querySelector("[data-paper]");
  const field = (row, way) => form.elements[`point_${row}_${way}`];
  const rows = () => [...form.querySelectorAll("[data-point]")].map((row) => row.dataset.point);
  const perUnit = () => Number(paper().dataset.perUnit);
  const inUnits = (mm) => String(Number((mm / perUnit()).toFixed(3)));

  const placeOf = (event) => {
    const svg = paper();
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return [Math.max(0, spot.x), Math.max(0, -spot.y)];
  };
  const put = (row, across, up) => {
    field(row, "across").value = inUnits(Math.max(0, across));
    field(row, "up").value = inUnits(Math.max(0, up));
    lastRow = row;
  };
  const changed = () => form.dispatchEvent(new Event("change", { bubbles: true }));
  const spotOf = (handle) => [Number(handle.getAttribute("cx")), -Number(handle.getAttribute("cy"))];

  sketch.addEventListener("pointerdown", (event) => {
    const svg = event.target.closest("[data-paper]");
    if (!svg || svg.hasAttribute("data-fixed")) return;
    const handle = event.target.closest("[data-row]");
    if (handle) {
      held = handle;
      handle.setPointerCapture(event.pointerId);
      handle.focus();
      event.preventDefault();
      return;
    }
    const free = rows().find((row) => !field(row, "across").value && !field(row, "up").value);
    if (!free) return;
    put(free, ...placeOf(event));
    changed();
  });
  sketch.addEventListener("pointermove", (event) => {
    if (!held) return;
    const [across, up] = placeOf(event);
    held.setAttribute("cx", across);
    held.setAttribute("cy", -up);
  });
  sketch.addEventListener("pointerup", () => {
    if (!held) return;
    put(held.dataset.row, ...spotOf(held));
    held = null;
    changed();
  });
  sketch.addEventListener("pointercancel", () => { held = null; changed(); });

  const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  sketch.addEventListener("keydown", (event) => {
    const handle = event.target.closest("[data-row]");
    if (!handle) return;
    const row = handle.dataset.row;
    if (event.key === "Delete" || event.key === "Backspace") {
      field(row, "across").value = field(row, "up").value = "";
      event.preventDefault();
      changed();
      return;
    }
    const step = steps[event.key];
    if (!step) return;
    event.preventDefault();
    const mm = event.shiftKey ? 10 : 1;
    const [across, up] = spotOf(handle);
    put(row, across + step[0] * mm, up + step[1] * mm);
    handle.setAttribute("cx", Math.max(0, across + step[0] * mm));
    handle.setAttribute("cy", -Math.max(0, up + step[1] * mm));
    changed();
  });

  // the drawing was made anew: the point that was being moved keeps the focus
  document.body.addEventListener("htmx:afterSwap", (event) => {
    if (event.target !== sketch || lastRow === null) return;
    const handle = sketch.querySelector(`[data-row="${lastRow}"]`);
    if (handle && !form.contains(document.activeElement)) handle.focus();
  });

  // a row can be put in between: everything below moves down by one
  for (const line of form.querySelectorAll("[data-point]")) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain";
    button.textContent = "Insert";
    button.setAttribute("aria-label", `Insert a point after point ${line.dataset.point}`);
    button.addEventListener("click", () => {
      const all = rows();
      const after = all.indexOf(line.dataset.point);
      for (let at = all.length - 1; at > after + 1; at -= 1) {
        for (const way of ["across", "up", "edge"]) field(all[at], way).value = field(all[at - 1], way).value;
        field(all[at], "curve").checked = field(all[at - 1], "curve").checked;
      }
      const fresh = all[after + 1];
      if (!fresh) return;
      for (const way of ["across", "up", "edge"]) field(fresh, way).value = "";
      field(fresh, "curve").checked = false;
      field(fresh, "across").focus();
      changed();
    });
    line.append(Object.assign(document.createElement("td"), {}));
    line.lastElementChild.append(button);
  }
})();
