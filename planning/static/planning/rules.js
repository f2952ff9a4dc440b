// Offers only the places of the piece that is chosen beside them; the server checks all the same.
(() => {
  "use strict";
  const pairs = [...document.querySelectorAll("select[name$='copy']")].map((copy) => {
    const spot = document.getElementById(copy.id.replace(/copy$/, "spot"));
    return { copy, spot, groups: spot ? [...spot.querySelectorAll("optgroup")] : [] };
  });
  const owner = (option) => (option ? JSON.parse(option.value)[0] : "");
  for (const { copy, spot, groups } of pairs) {
    if (!spot) continue;
    const fit = () => {
      const piece = copy.value ? JSON.parse(copy.value)[0] : "";
      if (spot.value && piece && owner(spot.selectedOptions[0]) !== piece) spot.value = "";
      const wanted = groups.filter((group) => !piece || owner(group.querySelector("option")) === piece);
      const chosen = spot.value;
      for (const group of groups) group.remove();
      spot.append(...wanted);
      spot.value = chosen;
    };
    copy.addEventListener("change", fit);
    fit();
  }
})();
