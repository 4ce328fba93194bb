// Holes along the round's time. A boundary is dragged, or moved with the arrow keys; dropped on the one before
// it, the two holes become one; the spare boundary at the end begins a new hole where it is dropped.
import { clock, part, refill } from "./parts.js";

const NEAR_PX = 8;

export class Strip {
  constructor(box, desk) {
    this.box = box;
    this.desk = desk;
  }

  show(state, chosen) {
    if (this.dragging) return;
    const holes = state.holes;
    this.holes = holes;
    this.from = 0;
    this.to = Math.max(...holes.map((hole) => hole.end_s), ...state.media.map((one) => one.end), 1);
    const bands = holes.map((hole, place) =>
      part(
        "button",
        {
          type: "button",
          class: `band b${place % 2}${hole.hole === chosen ? " chosen" : ""}${hole.status === "check" ? " unsure" : ""}`,
          style: null,
          "data-key": `band-${hole.hole}`,
          "aria-label": `Hole ${hole.hole}, from ${clock(hole.start_s)}`,
          onclick: () => this.desk.choose(hole.hole, hole.start_s),
        },
        String(hole.hole),
      ),
    );
    const marks = holes.flatMap((hole) =>
      hole.shots.map((shot) => this.at(part("i", { class: `mark${shot.told ? "" : " inferred"}`, "aria-hidden": "true" }), shot.start_s)),
    );
    const handles = holes.slice(1).map((hole, place) => this.handle(hole, holes[place]));
    const spare = part(
      "button",
      { type: "button", class: "spare", "data-key": "spare", title: "Drag to where a hole begins", onclick: () => this.begin(this.desk.player.now) },
      "Begin a hole here",
    );
    this.drag(spare, (seconds) => this.begin(seconds));
    const track = part("div", { class: "track" }, bands, marks, handles);
    bands.forEach((band, place) => {
      const hole = holes[place];
      band.style.left = this.share(hole.start_s);
      band.style.width = `${((hole.end_s - hole.start_s) / (this.to - this.from)) * 100}%`;
    });
    this.track = track;
    refill(this.box, track, part("p", { class: "strip-tools" }, spare, this.mergeButton(chosen)));
  }

  share(seconds) {
    return `${((seconds - this.from) / (this.to - this.from)) * 100}%`;
  }

  at(node, seconds) {
    node.style.left = this.share(seconds);
    return node;
  }

  handle(hole, before) {
    const node = part("span", {
      class: "handle",
      role: "slider",
      tabindex: 0,
      "data-key": `handle-${hole.hole}`,
      "data-hole": hole.hole,
      "aria-label": `Start of hole ${hole.hole}`,
      "aria-valuemin": Math.round(before.start_s),
      "aria-valuemax": Math.round(hole.end_s),
      "aria-valuenow": Math.round(hole.start_s),
      "aria-valuetext": clock(hole.start_s),
      onkeydown: (event) => {
        const step = { ArrowLeft: -1, ArrowRight: 1, PageDown: -10, PageUp: 10 }[event.key];
        if (!step) return;
        event.preventDefault();
        event.stopPropagation();
        this.desk.act({ action: "set", hole: hole.hole, field: "start_s", value: String(hole.start_s + step) });
      },
    });
    this.at(node, hole.start_s);
    this.drag(node, (seconds, pixels) => {
      const width = this.track.getBoundingClientRect().width;
      const limit = (before.start_s - this.from) / (this.to - this.from) * width;
      if (pixels <= limit + NEAR_PX) this.desk.act({ action: "merge", hole: before.hole, other: hole.hole });
      else this.desk.act({ action: "set", hole: hole.hole, field: "start_s", value: seconds.toFixed(2) });
    });
    return node;
  }

  drag(node, drop) {
    node.addEventListener("pointerdown", (start) => {
      const box = this.track.getBoundingClientRect();
      let moved = false;
      let pixels = 0;
      const follow = (event) => {
        pixels = Math.min(Math.max(event.clientX - box.left, 0), box.width);
        if (!moved && Math.abs(event.clientX - start.clientX) < 4) return;
        moved = true;
        this.dragging = true;
        const seconds = this.from + (pixels / box.width) * (this.to - this.from);
        if (node.classList.contains("handle")) node.style.left = this.share(seconds);
        this.desk.player.seek(seconds);
      };
      const end = () => {
        removeEventListener("pointermove", follow);
        removeEventListener("pointerup", end);
        this.dragging = false;
        if (!moved) return;
        node.addEventListener("click", (event) => event.stopImmediatePropagation(), { capture: true, once: true });
        setTimeout(() => this.desk.render(), 0);
        drop(this.from + (pixels / box.width) * (this.to - this.from), pixels);
      };
      addEventListener("pointermove", follow);
      addEventListener("pointerup", end);
    });
  }

  begin(seconds) {
    const used = new Set(this.holes.map((hole) => hole.hole));
    const before = this.holes.filter((hole) => hole.start_s < seconds).at(-1);
    let number = (before?.hole ?? 0) + 1;
    while (used.has(number)) number += 1;
    this.desk.act({ action: "split", hole: number, at_s: Number(seconds.toFixed(2)) }, number);
  }

  mergeButton(chosen) {
    const place = this.holes.findIndex((hole) => hole.hole === chosen);
    if (place < 1) return null;
    const before = this.holes[place - 1].hole;
    const merge = () => this.desk.act({ action: "merge", hole: before, other: chosen }, before);
    return part("button", { type: "button", "data-key": "merge", onclick: merge }, `Join hole ${chosen} to ${before}`);
  }
}
