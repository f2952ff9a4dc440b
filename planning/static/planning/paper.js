// Drawing a piece on squared paper: points are set, dragged and nudged; the form's rows stay the truth.
(() => {
  "use strict";
  const form = document.querySelector("[data-paper-form]");
  if (!form) return;
  const sketch = document.getElementById("sketch");
  let held = null;
  let isMoved = false;
  let lastRow = null;

  const paper = () => sketch.querySelector("[data-paper]");
  const field = (row, way) => form.elements[`point_${row}_${way}`];
  const rows = () => [...form.querySelectorAll("[data-point]")].map((row) => row.dataset.point);
  const perUnit = () => Number(paper().dataset.perUnit);
  // what a hand can place: a millimetre, or a sixteenth of an inch written as a fraction
  const inInches = () => perUnit() === 25.4;
  const step = () => (inInches() ? 25.4 / 16 : 1);
  const rounded = (mm) => Math.round(mm / step()) * step();
  const inUnits = (mm) => {
    const parts = Math.round((mm / 25.4) * 16);
    if (!inInches() || Math.abs(parts * 25.4 / 16 - mm) > 0.01) return String(Number((mm / perUnit()).toFixed(3)));
    let [top, bottom] = [parts % 16, 16];
    while (top && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
    const whole = Math.floor(parts / 16);
    return top ? `${whole || ""} ${top}/${bottom}`.trim() : String(whole);
  };

  const placeOf = (event) => {
    const svg = paper();
    const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    return [rounded(Math.max(0, spot.x)), rounded(Math.max(0, -spot.y))];
  };
  const put = (row, across, up) => {
    field(row, "across").value = inUnits(Math.max(0, across));
    field(row, "up").value = inUnits(Math.max(0, up));
    lastRow = row;
  };
  const isFree = (row) => ["across", "up", "edge"].every((way) => !field(row, way).value);
  const changed = () => form.dispatchEvent(new Event("change", { bubbles: true }));
  const spotOf = (handle) => [Number(handle.getAttribute("cx")), -Number(handle.getAttribute("cy"))];

  sketch.addEventListener("pointerdown", (event) => {
    const handle = event.target.closest("[data-paper]:not([data-fixed]) [data-row]");
    if (!handle) return;
    held = handle;
    isMoved = false;
    handle.setPointerCapture(event.pointerId);
    handle.focus();
    event.preventDefault();
  });
  // a point is set by a click, which a finger that only scrolls past never makes
  sketch.addEventListener("click", (event) => {
    if (!event.target.closest("[data-paper]:not([data-fixed])") || event.target.closest("[data-row]")) return;
    const free = rows().find(isFree);
    if (!free) return;
    put(free, ...placeOf(event));
    changed();
  });
  sketch.addEventListener("pointermove", (event) => {
    if (!held) return;
    isMoved = true;
    const [across, up] = placeOf(event);
    held.setAttribute("cx", across);
    held.setAttribute("cy", -up);
  });
  sketch.addEventListener("pointerup", () => {
    if (!held) return;
    if (isMoved) {
      put(held.dataset.row, ...spotOf(held));
      changed();
    }
    held = null;
  });
  sketch.addEventListener("pointercancel", () => { held = null; changed(); });

  const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
  sketch.addEventListener("keydown", (event) => {
    const handle = event.target.closest("[data-row]");
    if (!handle) return;
    const row = handle.dataset.row;
    if (event.key === "Delete" || event.key === "Backspace") {
      for (const way of ["across", "up", "edge"]) field(row, way).value = "";
      field(row, "curve").checked = false;
      event.preventDefault();
      changed();
      return;
    }
    const way = steps[event.key];
    if (!way) return;
    event.preventDefault();
    const mm = event.shiftKey ? (inInches() ? 12.7 : 10) : step();
    const [across, up] = spotOf(handle);
    put(row, across + way[0] * mm, up + way[1] * mm);
    handle.setAttribute("cx", Math.max(0, across + way[0] * mm));
    handle.setAttribute("cy", -Math.max(0, up + way[1] * mm));
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
      if (!isFree(all.at(-1))) {
        form.elements.more_rows.click();
        return;
      }
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
