"use strict";
/* Adds pointing, sorting and picking out. All that it shows is on the page without it. */
(() => {
  const number = (text) => Number(text.replace("\u2212", "-").replace(/[\s\u202f]/g, ""));

  /* Sorting: a header becomes a button; what has no number goes last, and a first column without
     numbers, of days or names, keeps the order in which the page came. */
  const key = (row, column) => {
    const cell = row.cells[column];
    const text = (cell.dataset.sort ?? cell.textContent).trim();
    if (column === 0 && Number.isNaN(number(text))) {
      return { text, value: Number(row.dataset.order), empty: false, numeric: true };
    }
    const value = number(text);
    return { text, value, empty: text === "", numeric: text !== "" && !Number.isNaN(value) };
  };
  const compare = (a, b) => {
    if (a.numeric !== b.numeric) return a.numeric ? -1 : 1;
    return a.numeric ? a.value - b.value : a.text.localeCompare(b.text, "en");
  };
  const sort = (table, column, head) => {
    const down = head.getAttribute("aria-sort") === "ascending";
    const body = table.tBodies[0];
    const rows = [...body.rows].map((row) => ({ row, key: key(row, column) }));
    rows.sort((a, b) => {
      if (a.key.numeric !== b.key.numeric) return compare(a.key, b.key);
      return down ? compare(b.key, a.key) : compare(a.key, b.key);
    });
    rows.forEach(({ row }) => body.append(row));
    for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
    head.setAttribute("aria-sort", down ? "descending" : "ascending");
  };
  for (const table of document.querySelectorAll("table.sortable")) {
    [...table.tBodies[0].rows].forEach((row, place) => (row.dataset.order = place));
    [...table.tHead.rows[0].cells].forEach((head, column) => {
      const button = document.createElement("button");
      button.type = "button";
      button.append(...head.childNodes);
      button.addEventListener("click", () => sort(table, column, head));
      head.append(button);
    });
    table.tHead.rows[0].cells[0].setAttribute("aria-sort", "ascending");
  }

  /* Pointing: the nearest drawn point is read out under the plate. */
  const SVG = "http://www.w3.org/2000/svg";
  const points = (path) => {
    const found = [];
    for (const part of path.getAttribute("d").matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
      found.push([Number(part[1]), Number(part[2])]);
    }
    return found;
  };
  const unit = (title) => title.slice(title.lastIndexOf(",") + 1).trim();
  const digits = (span) => Math.max(0, Math.ceil(-Math.log10(span / 1000)));
  const axis = (svg, name, length, turned) => {
    const [low, high] = svg.dataset[name].split(" ").map(Number);
    const title = svg.dataset[name + "Title"];
    const unsigned = svg.dataset[name + "Sign"] === "none";
    return (at) => {
      const share = turned ? 1 - at / length : at / length;
      const value = low + share * (high - low);
      const shown = (unsigned ? Math.abs(value) : value).toFixed(digits(high - low));
      return shown.replace("-", "\u2212") + "\u00a0" + unit(title);
    };
  };
  const readable = (svg) => {
    const [left, top, width, height] = svg.dataset.frame.split(" ").map(Number);
    const across = axis(svg, "x", width, false);
    const up = axis(svg, "y", height, true);
    const targets = [];
    for (const path of svg.querySelectorAll("path[data-tip]")) {
      const curve = path.classList.contains("curve");
      for (const [x, y] of points(path)) {
        const tip = path.dataset.tip;
        const words = curve ? () => tip + ": " + up(y) + ", " + across(x) : () => tip;
        targets.push({ x: x + left, y: y + top, words });
      }
    }
    return targets;
  };
  const pointable = (svg, readout) => {
    const targets = readable(svg);
    const spot = document.createElementNS(SVG, "circle");
    spot.setAttribute("r", "5");
    spot.setAttribute("class", "spot");
    spot.setAttribute("visibility", "hidden");
    svg.append(spot);
    const point = (event) => {
      const at = new DOMPoint(event.clientX, event.clientY);
      const here = at.matrixTransform(svg.getScreenCTM().inverse());
      let best = null;
      let least = 60 * 60;
      for (const target of targets) {
        const away = (target.x - here.x) ** 2 + (target.y - here.y) ** 2;
        if (away < least) {
          least = away;
          best = target;
        }
      }
      readout.textContent = best ? best.words() : "\u00a0";
      spot.setAttribute("visibility", best ? "visible" : "hidden");
      if (best) {
        spot.setAttribute("cx", best.x);
        spot.setAttribute("cy", best.y);
      }
    };
    svg.addEventListener("pointermove", point);
    svg.addEventListener("pointerdown", point);
    svg.addEventListener("pointerleave", () => {
      readout.textContent = "\u00a0";
      spot.setAttribute("visibility", "hidden");
    });
  };
  for (const drawing of document.querySelectorAll(".drawing")) {
    const readout = document.createElement("p");
    readout.className = "readout";
    readout.setAttribute("aria-hidden", "true");
    readout.textContent = "\u00a0";
    drawing.after(readout);
    for (const svg of drawing.querySelectorAll("svg.plot")) pointable(svg, readout);
  }

  /* Picking out: a chosen cell stands out in every plate of its bank. */
  const label = (path, words) => {
    const svg = path.ownerSVGElement;
    const [left, top] = svg.dataset.frame.split(" ").map(Number);
    const [x, y] = points(path).pop();
    const text = document.createElementNS(SVG, "text");
    text.setAttribute("class", "note chosen-note");
    text.setAttribute("x", x + left + 6);
    text.setAttribute("y", y + top + 4);
    text.textContent = words;
    svg.append(text);
    return text;
  };
  for (const choose of document.querySelectorAll(".choose")) {
    const section = choose.closest(".plates");
    choose.hidden = false;
    for (const box of choose.querySelectorAll("input")) {
      let labels = [];
      box.addEventListener("change", () => {
        labels.forEach((text) => text.remove());
        labels = [];
        for (const path of section.querySelectorAll(`path[data-cell="${box.value}"]`)) {
          path.classList.toggle("chosen", box.checked);
          const bare = box.checked && path.matches(".curve:not(.pick)");
          if (bare) labels.push(label(path, path.dataset.tip));
        }
      });
    }
  }
})();
