"use strict";
// The card works without this script; it adds zoom, pointing, layers, and ticks that this browser remembers.
(() => {
  const root = document.documentElement;
  const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];
  const memory = "podlayout-card-" + root.dataset.card;
  // The board, and parts of it that are shown larger.
  const views = all(".view");
  const told = document.getElementById("told");
  // Browsers may refuse to remember anything for a file; the ticks then last as long as the page.
  const kept = {
    read() { try { return JSON.parse(localStorage.getItem(memory)) ?? {}; } catch { return {}; } },
    write(state) { try { localStorage.setItem(memory, JSON.stringify(state)); } catch { told.textContent = "This browser does not keep the ticks."; } },
  };
  const state = Object.assign({ ticks: {}, hidden: {}, theme: "" }, kept.read());

  // Ticks.
  const boxes = all("input[data-key]");
  const progress = document.getElementById("progress");
  const drawings = views.map(view => {
    const bodies = new Map();
    for (const shape of all(".pl-pod[data-of], .pl-port-open-ring[data-of]", view)) bodies.set(shape.dataset.of, shape);
    // Under what covers all beyond a part that is shown larger.
    const group = document.createElementNS("http://www.w3.org/2000/svg", "g");
    view.querySelector("svg").insertBefore(group, document.getElementById(view.dataset.id + "edge"));
    return { bodies, group, places: new Map(), signs: all("text, .pl-port-open-ring", view).map(e => e.getBBox()) };
  });

  // Where in a pod a tick hides no word and no port: as large as may be, else where it hides least.
  function clear(box, short, signs) {
    const reach = (a, b) => Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) * Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));
    const near = signs.filter(s => reach(s, box) > 0);
    let best = null;
    for (const share of [0.42, 0.34, 0.27, 0.21]) {
      const size = share * short, edge = 0.12 * size;
      for (let j = 0; j <= 6; j++) {
        for (let i = 6; i >= 0; i--) {
          const at = { x: box.x + edge + (box.width - size - 2 * edge) * i / 6, y: box.y + edge + (box.height - size - 2 * edge) * j / 6, width: size, height: size };
          const hidden = near.reduce((sum, s) => sum + reach(s, at), 0) / (size * size);
          if (best === null || hidden < best[0] - 1e-9) best = [hidden, size, at.x, at.y];
        }
      }
      if (best[0] === 0) break;
    }
    return best.slice(1);
  }

  function mark(key, { bodies, group, places, signs }) {
    const body = bodies.get(key);
    if (!body) return;
    const box = body.getBBox(), short = Math.min(box.width, box.height), isPod = key.startsWith("P");
    if (isPod && !places.has(key)) places.set(key, clear(box, short, signs));
    const [size, x, y] = isPod ? places.get(key) : [0.9 * short, box.x + box.width / 2 - 0.45 * short, box.y + box.height / 2 - 0.45 * short];
    for (const [name, width] of [["done-mark under", 0.34], ["done-mark", 0.18]]) {
      const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
      path.setAttribute("class", name);
      path.setAttribute("stroke-width", size * width);
      path.setAttribute("d", `M${x} ${y + size * 0.55}L${x + size * 0.38} ${y + size * 0.92}L${x + size} ${y + size * 0.1}`);
      group.append(path);
    }
  }

  function showTicks() {
    for (const drawing of drawings) drawing.group.replaceChildren();
    for (const box of boxes) {
      box.checked = Boolean(state.ticks[box.dataset.key]);
      box.closest("tr, li").classList.toggle("done", box.checked);
      if (box.checked) for (const drawing of drawings) mark(box.dataset.key, drawing);
    }
    const count = letter => {
      const those = boxes.filter(b => b.dataset.key.startsWith(letter));
      return `${those.filter(b => b.checked).length} of ${those.length}`;
    };
    progress.textContent = `Pods set: ${count("P")}. Ports open: ${count("O")}.`;
  }

  for (const box of boxes) {
    box.addEventListener("change", () => {
      state.ticks[box.dataset.key] = box.checked;
      kept.write(state);
      showTicks();
    });
  }

  document.getElementById("untick").addEventListener("click", () => {
    if (!confirm("Take all ticks off this card?")) return;
    state.ticks = {};
    kept.write(state);
    showTicks();
  });

  // Pointing at a pod or port, in the picture or in its table.
  function point(key, scroll) {
    for (const lit of all(".lit")) lit.classList.remove("lit");
    const row = key ? document.getElementById("row-" + key) : null;
    if (!row) return;
    const heads = all("thead th", row.closest("table")).map(h => h.textContent.trim());
    const cells = [...row.children].slice(row.querySelector(".tick") ? 1 : 0);
    const names = heads.slice(heads.length - cells.length);
    told.textContent = cells.map((c, i) => `${names[i]} ${c.textContent.trim()}`).join(", ");
    row.classList.add("lit");
    for (const shape of all(".view [data-of]")) shape.classList.toggle("lit", shape.dataset.of === key);
    if (scroll) row.scrollIntoView({ block: "nearest" });
  }

  for (const button of all("button[data-show]")) {
    button.addEventListener("click", () => {
      point(button.dataset.show, false);
      views[0].scrollIntoView({ block: "nearest" });
    });
  }

  // A table that is wider than its place is stacked: each row a block, every figure under its heading.
  for (const table of all("table")) {
    const heads = [...table.tHead.rows[0].cells].map(c => c.textContent.trim());
    table.setAttribute("role", "table");
    for (const part of [table.tHead, ...table.tBodies]) part.setAttribute("role", "rowgroup");
    for (const row of table.rows) {
      row.setAttribute("role", "row");
      for (const cell of row.cells) {
        cell.setAttribute("role", { col: "columnheader", row: "rowheader" }[cell.scope] ?? "cell");
        if (row.parentNode !== table.tHead && (cell.textContent.trim() || cell.querySelector("input"))) cell.dataset.name = heads[cell.cellIndex];
      }
    }
  }
  function stack() {
    for (const place of all(".scroll")) {
      place.classList.remove("stacked");
      place.classList.toggle("stacked", place.scrollWidth > place.clientWidth);
    }
  }
  addEventListener("resize", stack);
  stack();

  // Layers.
  for (const box of all("input[data-layers]")) {
    const show = () => {
      for (const name of box.dataset.layers.split(" ")) {
        for (const view of views) document.getElementById(view.dataset.id + name)?.classList.toggle("off", !box.checked);
      }
    };
    box.checked = !state.hidden[box.dataset.layers];
    show();
    box.addEventListener("change", () => {
      state.hidden[box.dataset.layers] = !box.checked;
      kept.write(state);
      show();
    });
  }

  // Zoom and pan of a picture: the part of it that is seen.
  function moves(view) {
    const picture = view.querySelector("svg");
    const [x0, y0, w0, h0] = picture.getAttribute("viewBox").split(" ").map(Number), full = { x: x0, y: y0, w: w0, h: h0 };
    const seen = { ...full };
    let moved = false;

    function look() {
      seen.w = Math.min(full.w, Math.max(full.w / 16, seen.w));
      seen.h = seen.w * full.h / full.w;
      seen.x = Math.min(full.x + full.w - seen.w, Math.max(full.x, seen.x));
      seen.y = Math.min(full.y + full.h - seen.h, Math.max(full.y, seen.y));
      picture.setAttribute("viewBox", `${seen.x} ${seen.y} ${seen.w} ${seen.h}`);
      view.classList.toggle("near", seen.w < full.w * 0.999);
    }

    // About a point given as shares of the picture's width and height.
    function zoom(factor, sx = 0.5, sy = 0.5) {
      const w = Math.min(full.w, Math.max(full.w / 16, seen.w / factor)), h = w * full.h / full.w;
      seen.x += (seen.w - w) * sx;
      seen.y += (seen.h - h) * sy;
      seen.w = w;
      look();
    }

    const shares = (x, y) => {
      const r = picture.getBoundingClientRect(), scale = Math.min(r.width / seen.w, r.height / seen.h);
      return [(x - r.x - (r.width - seen.w * scale) / 2) / (seen.w * scale), (y - r.y - (r.height - seen.h * scale) / 2) / (seen.h * scale), scale];
    };
    const fit = () => { Object.assign(seen, full); look(); };

    // The part, its blank, and the words that belong to them, with a little of the board around, as large as the picture lets it.
    function close() {
      const boxes = all(".pl-part-edge, .pl-blank-edge, #pic-labels text, #pic-labels .pl-stretch-flag", picture).map(e => e.getBBox());
      if (boxes.length === 0) return;
      const left = Math.min(...boxes.map(b => b.x)), right = Math.max(...boxes.map(b => b.x + b.width));
      const top = Math.min(...boxes.map(b => b.y)), bottom = Math.max(...boxes.map(b => b.y + b.height));
      seen.w = Math.max(right - left, (bottom - top) * full.w / full.h) * 1.06;
      seen.x = (left + right - seen.w) / 2;
      seen.y = (top + bottom - seen.w * full.h / full.w) / 2;
      look();
    }
    picture.addEventListener("pointerover", e => { if (e.pointerType === "mouse" && e.target.dataset.of) point(e.target.dataset.of, false); });
    picture.addEventListener("click", e => { if (!moved && e.target.dataset.of) point(e.target.dataset.of, true); });
    view.addEventListener("wheel", e => {
      if (!e.ctrlKey && seen.w >= full.w * 0.999 && e.deltaY > 0) return;
      e.preventDefault();
      zoom(Math.exp(-e.deltaY / 400), ...shares(e.clientX, e.clientY));
    }, { passive: false });
    view.addEventListener("keydown", e => {
      const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
      if (step) { seen.x += step[0] * seen.w / 8; seen.y += step[1] * seen.h / 8; look(); }
      else if (e.key === "+" || e.key === "=") zoom(1.5);
      else if (e.key === "-") zoom(1 / 1.5);
      else if (e.key === "0") fit();
      else if (e.key === "1" && view === views[0]) close();
      else return;
      e.preventDefault();
    });

    const fingers = new Map();
    view.addEventListener("pointerdown", e => { fingers.set(e.pointerId, { x: e.clientX, y: e.clientY }); moved = false; });
    view.addEventListener("pointermove", e => {
      const last = fingers.get(e.pointerId);
      if (!last) return;
      const now = { x: e.clientX, y: e.clientY }, others = [...fingers.entries()].filter(([id]) => id !== e.pointerId).map(([, p]) => p);
      if (others.length > 0) {
        const apart = p => Math.hypot(p.x - others[0].x, p.y - others[0].y);
        zoom(apart(now) / Math.max(1, apart(last)), ...shares((now.x + others[0].x) / 2, (now.y + others[0].y) / 2));
        moved = true;
      } else if (view.classList.contains("near")) {
        if (!moved && Math.hypot(now.x - last.x, now.y - last.y) < 6) return;
        const scale = shares(0, 0)[2];
        seen.x -= (now.x - last.x) / scale;
        seen.y -= (now.y - last.y) / scale;
        moved = true;
        look();
      }
      fingers.set(e.pointerId, now);
    });
    for (const end of ["pointerup", "pointercancel", "pointerleave"]) view.addEventListener(end, e => fingers.delete(e.pointerId));
    return { zoom, fit, close };
  }

  const [board] = views.map(moves);
  document.getElementById("nearer").addEventListener("click", () => board.zoom(1.5));
  document.getElementById("farther").addEventListener("click", () => board.zoom(1 / 1.5));
  document.getElementById("whole").addEventListener("click", board.fit);
  document.getElementById("close").addEventListener("click", board.close);

  // Light, dark, or as the machine is set.
  const theme = document.getElementById("theme"), themes = ["", "light", "dark"];
  const names = { "": "Light or dark", light: "Light", dark: "Dark" };
  function dress() {
    if (state.theme) root.dataset.theme = state.theme; else delete root.dataset.theme;
    theme.textContent = names[state.theme];
  }
  theme.addEventListener("click", () => {
    state.theme = themes[(themes.indexOf(state.theme) + 1) % themes.length];
    kept.write(state);
    dress();
  });

  dress();
  showTicks();
})();
