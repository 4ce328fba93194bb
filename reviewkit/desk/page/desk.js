// The desk: state from the server in, requests out, keys to both.
import { Doubts } from "./doubts.js";
import { part } from "./parts.js";
import { Player } from "./player.js";
import { Strip } from "./strip.js";
import { Strokes } from "./strokes.js";

const find = (id) => document.getElementById(id);

class Desk {
  constructor() {
    this.player = new Player(find("player"), (index) => this.post(`copy/${index}`, {}));
    this.strip = new Strip(find("strip"), this);
    this.doubts = new Doubts(find("doubts"), this);
    this.strokes = new Strokes(find("hole"), find("card"), this);
    find("undo").addEventListener("click", () => this.act({ action: "undo" }));
    document.addEventListener("keydown", (event) => this.key(event));
    this.queue = Promise.resolve();
  }

  async open() {
    await this.fetch();
    this.chosen ??= this.state.doubts[0]?.hole ?? this.state.holes[0]?.hole;
    this.render();
    this.doubts.jump(false);
    this.watch();
  }

  async fetch() {
    const version = encodeURIComponent(this.state?.version ?? "");
    const answer = await fetch(`state?version=${version}`);
    if (answer.status === 204) return;
    if (!answer.ok) throw new Error(await answer.text());
    this.take(await answer.json());
  }

  /** Look again often while the rest is read anew or a copy is made, now and then otherwise. */
  watch() {
    const soon = this.state.busy || Object.keys(this.state.copying).length > 0;
    setTimeout(() => {
      this.queue
        .then(() => this.fetch())
        .catch(() => this.complain("The desk has stopped. Start it again with: reviewkit desk"))
        .finally(() => this.watch());
    }, soon ? 250 : 2000);
  }

  take(state) {
    this.state = state;
    if (!state.holes.some((hole) => hole.hole === this.chosen)) this.chosen = state.doubts[0]?.hole ?? state.holes[0]?.hole;
    this.render();
  }

  render() {
    const { state } = this;
    document.title = `${state.title}, ${state.total.to_par}`;
    find("title").textContent = state.title;
    const target = state.target === null ? "" : `, target ${state.target > 0 ? "+" : ""}${state.target}`;
    find("total").replaceChildren(part("strong", {}, state.total.to_par), ` ${state.total.strokes ?? "–"} strokes${target}`);
    find("work").textContent = state.busy ? "reading the rest anew" : state.made ? `${state.made} corrections kept` : "";
    find("undo").disabled = !state.last;
    find("undo").title = state.last;
    if (state.complaint) this.complain(state.complaint);
    this.player.show(state);
    this.strip.show(state, this.chosen);
    this.doubts.show(state);
    this.strokes.show(state, this.chosen);
  }

  choose(hole, seconds) {
    this.chosen = hole;
    if (seconds !== undefined) this.player.seek(seconds);
    this.strip.show(this.state, hole);
    this.strokes.show(this.state, hole);
  }

  play(seconds) {
    this.player.seek(seconds);
    this.player.video.play().catch(() => {});
  }

  /** Requests go one after the other, so that quick keys cannot overtake each other. */
  act(request, thenChoose) {
    return this.post("amend", request).then((done) => {
      if (done && thenChoose !== undefined) this.choose(thenChoose);
      return done;
    });
  }

  teach(heard, meant) {
    return this.post("teach", { heard, meant });
  }

  post(path, data) {
    const send = async () => {
      this.complain("");
      const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(data) });
      const told = await answer.json().catch(() => ({ error: "The desk has stopped." }));
      if (!answer.ok) {
        this.complain(told.error);
        this.render();
        return false;
      }
      this.take(told);
      return true;
    };
    this.queue = this.queue.then(send, send);
    return this.queue;
  }

  complain(text) {
    find("complaint").textContent = text;
    find("complaint").hidden = !text;
  }

  key(event) {
    const inField = event.target.closest?.("input, select, textarea, video");
    if (event.key === "Escape" && inField) return event.target.blur();
    if (inField || event.ctrlKey || event.metaKey || event.altKey) return undefined;
    const act = KEYS[event.key];
    if (!act || (event.key === " " && event.target.closest?.("button, summary"))) return undefined;
    event.preventDefault();
    return act(this);
  }

  step(by) {
    const place = this.state.holes.findIndex((hole) => hole.hole === this.chosen) + by;
    const hole = this.state.holes[place];
    if (hole) this.choose(hole.hole, hole.start_s);
  }

  edit() {
    const doubt = this.doubts.current;
    const field = doubt?.field || "strokes";
    if (doubt) this.choose(doubt.hole);
    const hole = this.state.holes.find((one) => one.hole === this.chosen);
    const index = hole?.shots.findIndex((shot) => shot.stroke === doubt?.stroke) ?? -1;
    const key = index >= 0 ? `${hole.hole}.${index}-${field}` : `hole-${field}`;
    const input = document.querySelector(`[data-key="${CSS.escape(key)}"]`);
    input?.focus();
    input?.select?.();
  }
}

const KEYS = {
  a: (desk) => desk.doubts.accept(),
  n: (desk) => desk.doubts.alternative(),
  j: (desk) => desk.doubts.go(desk.doubts.place + 1),
  k: (desk) => desk.doubts.go(desk.doubts.place - 1),
  e: (desk) => desk.edit(),
  u: (desk) => desk.act({ action: "undo" }),
  " ": (desk) => desk.player.toggle(),
  ",": (desk) => desk.player.seek(desk.player.now - 2),
  ".": (desk) => desk.player.seek(desk.player.now + 2),
  "[": (desk) => desk.step(-1),
  "]": (desk) => desk.step(1),
};

new Desk().open();
