"use strict";
// Which view is shown, which vans, in which order. Without it the page shows its first view whole.
(() => {
  const byId = (id) => document.getElementById(id);
  const chosen = { ruleset: byId("ruleset"), equipment: byId("equipment"), units: byId("units") };
  const body = document.querySelector("#table tbody");
  const rows = [...body.rows];
  const heads = [...document.querySelectorAll("#table thead th")];
  const order = { key: "name", down: false };
  const plain = (text) => text.normalize("NFKD").replace(/[\u0300-\u036f]/g, "").toLowerCase();

  function show() {
    const names = Object.keys(chosen);
    for (const element of document.querySelectorAll("[data-ruleset], [data-equipment], [data-units]")) {
      const hide = names.some((name) => name in element.dataset && element.dataset[name] !== chosen[name].value);
      element.toggleAttribute("hidden", hide); // parts of pictures have no property of that name
    }
    filter();
    sort();
  }

  // The low and high end of a quantity in the view that is shown; null where it is not known.
  function ends(row, key) {
    const cell = row.querySelector(`[data-key="${key}"]:not([hidden])`);
    if (!cell || !("low" in cell.dataset)) return null;
    return [Number(cell.dataset.low), Number(cell.dataset.high)];
  }

  function filter() {
    const name = plain(byId("name").value.trim());
    const fuel = byId("fuel").value;
    const certain = byId("certainty").value === "certain";
    const limits = [["points", byId("least-points")], ...[...document.querySelectorAll(".least")].map((one) => [one.dataset.column, one])]
      .filter(([, input]) => input.value !== "").map(([key, input]) => [key, Number(input.value)]);
    for (const row of rows) {
      const burns = row.dataset.fuel ? row.dataset.fuel.split("+") : null;
      const fits = plain(row.dataset.name).includes(name)
        && (fuel === "" || (burns ? burns.includes(fuel) : !certain))
        && limits.every(([key, least]) => {
          const pair = ends(row, key);
          return pair ? pair[certain ? 0 : 1] >= least : !certain;
        });
      row.hidden = !fits;
      for (const part of document.querySelectorAll(`[data-article="${row.dataset.van}"]`)) part.hidden = !fits;
    }
  }

  function sort() {
    const compare = new Intl.Collator("en", { numeric: true }).compare;
    const byName = (a, b) => compare(a.dataset.name, b.dataset.name);
    const sorted = [...rows].sort((a, b) => {
      if (order.key === "name") return order.down ? byName(b, a) : byName(a, b);
      const [one, two] = [ends(a, order.key), ends(b, order.key)];
      if (!one || !two) return (one ? 0 : 1) - (two ? 0 : 1) || byName(a, b);
      return (order.down ? two[0] - one[0] : one[0] - two[0]) || (order.down ? two[1] - one[1] : one[1] - two[1]) || byName(a, b);
    });
    body.append(...sorted);
    const curves = document.querySelector(".curves");
    if (curves) curves.append(...sorted.map((row) => curves.querySelector(`[data-article="${row.dataset.van}"]`)));
    for (const head of heads) {
      if (head.dataset.sort === order.key) head.setAttribute("aria-sort", order.down ? "descending" : "ascending");
      else head.removeAttribute("aria-sort");
    }
    tell();
  }

  function tell() {
    const number = rows.filter((row) => !row.hidden).length;
    const column = heads.find((one) => one.dataset.sort === order.key);
    const head = column.querySelector("button").innerText.trim();
    const first = order.down === (column.dataset.better !== "low") ? "highest" : "lowest";
    const way = order.key === "name" ? (order.down ? "in reverse order of name" : "in order of name")
      : `listed by “${head}”, ${first} certain figure first, vans where it is not known last; where bars overlap, this is no ranking`;
    byId("shown").textContent = `Vans shown: ${number} of ${rows.length}, ${way}.`;
  }

  function reveal() {
    const target = location.hash.length > 1 ? byId(decodeURIComponent(location.hash.slice(1))) : null;
    if (!target) return;
    for (let one = target; one; one = one.parentElement) if (one.tagName === "DETAILS") one.open = true;
    target.scrollIntoView();
  }

  // Scroll a picture that is wider than the screen sideways until its marked words are in the middle.
  function centre(details) {
    for (const box of details.querySelectorAll(".cutting")) {
      if (box.scrollWidth <= box.clientWidth) continue;
      box.tabIndex = 0;
      box.scrollLeft = Number(box.dataset.middle) * box.scrollWidth - box.clientWidth / 2;
    }
  }

  for (const select of Object.values(chosen)) select.addEventListener("change", show);
  const form = byId("controls");
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", (event) => { if (!(event.target.id in chosen)) { filter(); tell(); } });
  form.addEventListener("reset", (event) => {
    event.preventDefault();
    for (const input of form.querySelectorAll("input")) input.value = "";
    byId("fuel").value = "";
    byId("certainty").value = "possible";
    filter();
    tell();
  });
  for (const head of heads) {
    head.querySelector("button").addEventListener("click", () => {
      const key = head.dataset.sort;
      order.down = order.key === key ? !order.down : key !== "name";
      order.key = key;
      sort();
    });
  }
  const parts = () => [...document.querySelectorAll("article:not([hidden]) details")];
  byId("open-all").addEventListener("click", () => parts().forEach((one) => { one.open = true; }));
  byId("close-all").addEventListener("click", () => parts().forEach((one) => { one.open = false; }));
  document.addEventListener("toggle", (event) => { if (event.target.open) centre(event.target); }, true);
  addEventListener("hashchange", reveal);
  byId("no-scripts").hidden = true;
  show();
  reveal();
})();
