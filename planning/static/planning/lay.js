// Looks closer at the drawing of a lay, and moves its pieces where they may be moved.
// The page works without it: the drawing is then a plain picture and places are typed.
(() => {
  "use strict";

  const STEP_MM = 1;
  const LARGE_STEP_MM = 10;
  const MOST_ZOOM = 12;
  const JUDGE_AFTER_MS = 200;
  const SEND_AFTER_MS = 250;

  // ---- looking closer: the viewBox is what is seen ----

  const kept = new Map(); // what was seen of each panel, for when its drawing is renewed
  const numbers = (svg) => svg.getAttribute("viewBox").split(" ").map(Number);
  const drawingOf = (box) => box.querySelector("svg");

  const see = (box, [x, y, wide, high]) => {
    const svg = drawingOf(box);
    const [left, top, fullWide, fullHigh] = box.whole;
    const ratio = fullHigh / fullWide;
    wide = Math.min(fullWide, Math.max(fullWide / MOST_ZOOM, wide));
    high = wide * ratio;
    x = Math.min(left + fullWide - wide, Math.max(left, x));
    y = Math.min(top + fullHigh - high, Math.max(top, y));
    svg.setAttribute("viewBox", [x, y, wide, high].map((n) => n.toFixed(2)).join(" "));
    box.classList.toggle("zoomed", wide < fullWide - 0.01);
    kept.set(box.dataset.zoomable, [x, y, wide, high]);
  };

  const pointIn = (element, event) =>
    new DOMPoint(event.clientX, event.clientY).matrixTransform(element.getScreenCTM().inverse());

  const zoom = (box, by, at) => {
    const [x, y, wide, high] = numbers(drawingOf(box));
    const about = at || { x: x + wide / 2, y: y + high / 2 };
    see(box, [about.x - (about.x - x) / by, about.y - (about.y - y) / by, wide / by, high / by]);
  };

  const pan = (box, across, down) => {
    const [x, y, wide, high] = numbers(drawingOf(box));
    see(box, [x + across * wide, y + down * high, wide, high]);
  };

  const attach = (box) => {
    const svg = drawingOf(box);
    if (box.whole || !svg) return;
    box.whole = numbers(svg);
    const before = kept.get(box.dataset.zoomable);
    if (before) see(box, before);
    const buttons = box.querySelector(".zoom-buttons");
    buttons.hidden = false;
    buttons.addEventListener("click", (event) => {
      const button = event.target.closest("[data-zoom]");
      if (!button) return;
      if (button.dataset.zoom === "whole") see(box, box.whole);
      else zoom(box, button.dataset.zoom === "in" ? 1.5 : 1 / 1.5);
    });
    svg.addEventListener("wheel", (event) => {
      const isWanted = event.ctrlKey || event.metaKey || box.contains(document.activeElement);
      if (!isWanted) return;
      event.preventDefault();
      zoom(box, Math.exp(-event.deltaY / 400), pointIn(svg, event));
    }, { passive: false });
    fingers(box, svg);
    if (!svg.matches("[data-table]")) keys(box, svg);
  };

  // two fingers zoom; one finger or the mouse moves the view once it is zoomed
  const fingers = (box, svg) => {
    const down = new Map();
    svg.addEventListener("pointerdown", (event) => {
      if (event.target.closest("[data-piece]") && down.size === 0 && event.isPrimary) return;
      down.set(event.pointerId, event);
      if (down.size === 2 || box.classList.contains("zoomed")) svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener("pointermove", (event) => {
      const last = down.get(event.pointerId);
      if (!last) return;
      const others = [...down.values()].filter((each) => each.pointerId !== event.pointerId);
      if (others.length === 1) {
        const apart = (a, b) => Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY);
        const middle = { clientX: (event.clientX + others[0].clientX) / 2, clientY: (event.clientY + others[0].clientY) / 2 };
        zoom(box, apart(event, others[0]) / Math.max(1, apart(last, others[0])), pointIn(svg, middle));
      } else if (box.classList.contains("zoomed")) {
        const from = pointIn(svg, last), to = pointIn(svg, event);
        const [x, y, wide, high] = numbers(svg);
        see(box, [x - to.x + from.x, y - to.y + from.y, wide, high]);
      }
      down.set(event.pointerId, event);
    });
    for (const end of ["pointerup", "pointercancel", "lostpointercapture"]) {
      svg.addEventListener(end, (event) => down.delete(event.pointerId));
    }
  };

  const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

  const keys = (box) => {
    box.tabIndex = 0;
    box.setAttribute("role", "group");
    box.setAttribute("aria-label", "Drawing: plus and minus zoom, arrow keys move the view, 0 shows the whole");
    box.addEventListener("keydown", (event) => {
      if (event.target !== box || event.ctrlKey || event.altKey || event.metaKey) return;
      const way = ARROWS[event.key];
      if (event.key === "+" || event.key === "=") zoom(box, 1.5);
      else if (event.key === "-") zoom(box, 1 / 1.5);
      else if (event.key === "0") see(box, box.whole);
      else if (way && box.classList.contains("zoomed")) pan(box, way[0] / 8, way[1] / 8);
      else return;
      event.preventDefault();
    });
  };

  // ---- moving pieces ----

  const form = () => document.getElementById("moving"); // what is in it is renewed with every answer
  const field = (name) => form().elements.namedItem(name);
  const table = () => form()?.querySelector("[data-table]");
  const draft = () => JSON.parse(field("draft").value);
  const isPlace = (place, value) => {
    const [piece, copy] = JSON.parse(value);
    return place.piece === piece && place.copy === copy;
  };

  // how far the piece lies from the panel's lower left: its own outline's box, carried along
  const boxOf = (group) => {
    const box = group.querySelector(".piece").getBBox();
    const svg = table().dataset;
    const [dx, dy] = group.moved || [0, 0];
    return { across: box.x + dx - Number(svg.left), up: box.y + dy - Number(svg.low), wide: box.width, high: box.height };
  };

  const shownLength = (mm) => {
    const text = (mm / Number(table().dataset.perUnit)).toFixed(3);
    return text.replace(/\.?0+$/, "") || "0";
  };

  const choose = (group) => {
    if (field("chosen").value === group.dataset.piece && group.matches(".chosen")) return;
    field("chosen").value = field("piece").value = group.dataset.piece;
    for (const each of form().querySelectorAll("[data-piece]")) mark(each, each === group);
    const place = draft().find((each) => isPlace(each, group.dataset.piece));
    const words = form().querySelector("[data-chosen-words]");
    words.textContent = group.dataset.words.charAt(0).toUpperCase() + group.dataset.words.slice(1);
    const turns = group.turns || [];
    if (turns.length) field("turn").replaceChildren(...turns.map(([value, name]) => new Option(name, value)));
    field("turn").value = nearestTurn(place.turn);
    field("panel").value = String(place.panel);
    showPlace(group);
  };

  const nearestTurn = (turn) => {
    const off = (option) => Math.abs(((Number(option.value) - turn + 540) % 360) - 180);
    const options = [...field("turn").options];
    return options.length ? options.reduce((a, b) => (off(b) < off(a) ? b : a)).value : "";
  };

  const mark = (group, isChosen) => {
    group.classList.toggle("chosen", isChosen);
    group.setAttribute("aria-pressed", String(isChosen));
  };

  const showPlace = (group) => {
    const { across, up } = boxOf(group);
    field("across").value = shownLength(across);
    field("up").value = shownLength(up);
  };

  const move = (group, dx, dy) => {
    if (group.matches(".locked")) return;
    const svg = table().dataset;
    const { across, up, wide, high } = boxOf(group);
    const within = (by, at, length, room) => Math.max(-at, Math.min(by, Math.max(0, room - length) - at));
    dx = within(dx, across, wide, Number(svg.wide));
    dy = within(dy, up, high, Number(svg.high));
    const [x, y] = group.moved || [0, 0];
    group.moved = [x + dx, y + dy];
    group.setAttribute("transform", `translate(${group.moved[0]} ${group.moved[1]})`);
    const places = draft();
    const place = places.find((each) => isPlace(each, group.dataset.piece));
    place.x += dx;
    place.y += dy;
    field("draft").value = JSON.stringify(places);
    showPlace(group);
    judgeSoon();
  };

  let waiting = 0;
  let asked = 0;
  const judgeSoon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(judge, JUDGE_AFTER_MS);
  };

  const judge = async () => {
    const number = ++asked;
    const body = new FormData();
    body.append("draft", field("draft").value);
    try {
      const answer = await fetch(form().dataset.moving, {
        method: "POST",
        body,
        headers: { "X-CSRFToken": field("csrfmiddlewaretoken").value },
      });
      if (!answer.ok) throw new Error();
      const { faults } = await answer.json();
      if (number === asked) tell(faults);
    } catch {
      if (number === asked) tell([{ words: "The program does not answer, so nothing here is checked.", copies: [] }]);
    }
  };

  const tell = (faults) => {
    const bad = new Set(faults.flatMap((each) => each.copies));
    for (const group of form().querySelectorAll("[data-piece]")) group.classList.toggle("faulty", bad.has(group.dataset.piece));
    const judged = form().querySelector("[data-judged]");
    const line = (tag, words, name) => Object.assign(document.createElement(tag), { textContent: words, className: name || "" });
    if (!faults.length) {
      judged.replaceChildren(line("p", "Every piece here keeps every rule.", "note"));
      return;
    }
    const box = line("div", "", "stop");
    const list = document.createElement("ul");
    list.append(...faults.map((each) => line("li", each.words)));
    box.append(line("strong", faults.length === 1 ? "1 thing to mend." : `${faults.length} things to mend.`), list);
    judged.replaceChildren(box);
  };

  const attachTable = () => {
    const svg = table();
    if (!svg || svg.isReady) return;
    svg.isReady = true;
    asked += 1; // an answer about the drawing before this one comes too late
    for (const hint of form().querySelectorAll("[data-with-script]")) hint.hidden = false;
    const chosen = field("chosen").value;
    for (const group of svg.querySelectorAll("[data-piece]")) {
      group.setAttribute("tabindex", "0");
      group.setAttribute("role", "button");
      group.setAttribute("aria-label", group.dataset.words + (group.matches(".locked") ? ", kept in its place" : ""));
      group.turns = JSON.parse(group.dataset.turns || "[]");
      mark(group, group.dataset.piece === chosen);
      drag(group, svg.querySelector("[data-frame]"));
    }
  };

  const drag = (group, frame) => {
    let last = null;
    group.addEventListener("pointerdown", (event) => {
      if (event.button !== 0 || !event.isPrimary) return;
      choose(group);
      last = pointIn(frame, event);
      group.setPointerCapture(event.pointerId);
    });
    group.addEventListener("pointermove", (event) => {
      if (!last) return;
      const here = pointIn(frame, event);
      const before = group.moved || [0, 0];
      move(group, here.x - last.x, here.y - last.y);
      const after = group.moved || [0, 0];
      // what was held back at the edge is not made up for later
      last = { x: last.x + after[0] - before[0], y: last.y + after[1] - before[1] };
    });
    for (const end of ["pointerup", "pointercancel"]) group.addEventListener(end, () => { last = null; });
  };

  document.addEventListener("keydown", (event) => {
    const group = event.target.closest?.("[data-piece]");
    const way = ARROWS[event.key];
    if (!group || !table() || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === "Enter" || event.key === " ") choose(group);
    else if (way) {
      const step = event.shiftKey ? LARGE_STEP_MM : STEP_MM;
      choose(group);
      move(group, way[0] * step, -way[1] * step);
    } else return;
    event.preventDefault();
  });

  // a typed number is checked a moment later, so that a button pressed next still comes first
  let sending = 0;
  document.addEventListener("change", (event) => {
    const changed = event.target;
    if (!changed.name || changed.form !== form() || !table()) return;
    clearTimeout(sending);
    sending = setTimeout(() => form().requestSubmit(), changed.matches("select") ? 0 : SEND_AFTER_MS);
  });
  for (const sooner of ["submit", "pointerdown"]) document.addEventListener(sooner, () => clearTimeout(sending));

  const begin = () => {
    for (const box of document.querySelectorAll("[data-zoomable]")) attach(box);
    attachTable();
  };
  document.addEventListener("htmx:afterSettle", begin);
  begin();
})();
