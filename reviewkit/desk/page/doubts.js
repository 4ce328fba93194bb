// What a person should check, worst first: one at a time, with its words, the readings and why.
import { clock, part, refill } from "./parts.js";

export class Doubts {
  constructor(box, desk) {
    this.box = box;
    this.desk = desk;
    this.key = null;
    this.pick = 0;
  }

  show(state) {
    this.list = state.doubts;
    const place = Math.max(0, this.list.findIndex((doubt) => name(doubt) === this.key));
    const known = this.list.some((doubt) => name(doubt) === this.key);
    this.place = known ? place : Math.min(this.place ?? 0, Math.max(this.list.length - 1, 0));
    if (!known) {
      this.pick = 0;
      this.key = this.current ? name(this.current) : null;
    }
    this.render();
  }

  get current() {
    return this.list?.[this.place];
  }

  get readings() {
    const doubt = this.current;
    return doubt ? [doubt.now, ...doubt.others] : [];
  }

  render() {
    const doubt = this.current;
    if (!doubt) {
      refill(this.box, part("h2", {}, "Nothing to check"), part("p", { class: "quiet" }, "Every score stands as read or as you confirmed it."));
      return;
    }
    const where = `Hole ${doubt.hole}${doubt.stroke ? `, stroke ${doubt.stroke}` : ""}`;
    refill(
      this.box,
      part("h2", {}, `${this.list.length} to check`),
      part(
        "article",
        { class: "doubt", "aria-label": where },
        part(
          "p",
          { class: "where" },
          part("strong", {}, where),
          " ",
          part("button", { type: "button", class: "play", "data-key": "jump", onclick: () => this.jump(true) }, `play ${clock(doubt.at_s)}`),
        ),
        part("p", { class: "why" }, doubt.text),
        doubt.words && part("blockquote", { class: "said" }, doubt.words),
        doubt.field && this.choices(doubt),
        this.buttons(doubt),
      ),
      this.queue(),
    );
  }

  choices(doubt) {
    return part(
      "div",
      { class: "readings", role: "radiogroup", "aria-label": doubt.field.replaceAll("_", " ") },
      part("span", { class: "field" }, doubt.field.replaceAll("_", " ")),
      this.readings.map((text, place) =>
        part(
          "button",
          {
            type: "button",
            role: "radio",
            "aria-checked": String(place === this.pick),
            "data-key": `reading-${place}`,
            onclick: () => this.choose(place),
          },
          text || "not known",
          place === 0 ? part("small", {}, " as it stands") : "",
        ),
      ),
    );
  }

  buttons(doubt) {
    if (doubt.correction !== null && doubt.field === "") {
      const drop = () => this.desk.act({ action: "undo", id: doubt.correction });
      return part("p", { class: "acts" }, part("button", { type: "button", "data-key": "accept", onclick: drop }, "Let this correction go"));
    }
    const take = doubt.correction !== null && part(
      "button",
      { type: "button", "data-key": "release", onclick: () => this.desk.act({ action: "undo", id: doubt.correction }) },
      "Take the reading's",
    );
    return part(
      "p",
      { class: "acts" },
      part("button", { type: "button", class: "yes", "data-key": "accept", onclick: () => this.accept() }, "Accept ", part("kbd", {}, "a")),
      doubt.others.length > 0 && part("button", { type: "button", "data-key": "next", onclick: () => this.alternative() }, "Next reading ", part("kbd", {}, "n")),
      take,
    );
  }

  queue() {
    if (this.list.length < 2) return null;
    return part(
      "ol",
      { class: "queue" },
      this.list.map((doubt, place) =>
        part(
          "li",
          {},
          part(
            "button",
            { type: "button", "data-key": `doubt-${place}`, "aria-current": place === this.place ? "true" : null, onclick: () => this.go(place) },
            `${clock(doubt.at_s)} hole ${doubt.hole}${doubt.stroke ? `.${doubt.stroke}` : ""} `,
            part("span", { class: "quiet" }, doubt.field.replaceAll("_", " ")),
          ),
        ),
      ),
    );
  }

  choose(place) {
    this.pick = place;
    this.render();
  }

  alternative() {
    if (this.readings.length > 1) this.choose((this.pick + 1) % this.readings.length);
  }

  accept() {
    const doubt = this.current;
    if (!doubt) return;
    if (doubt.correction !== null && doubt.field === "") return this.desk.act({ action: "undo", id: doubt.correction });
    const row = { hole: doubt.hole, stroke: doubt.stroke };
    const request = this.pick === 0
      ? { action: "accept", ...row, field: doubt.field }
      : { action: "set", ...row, field: doubt.field, value: this.readings[this.pick] };
    this.key = null;
    return this.desk.act(request).then(() => this.jump(false));
  }

  go(place) {
    if (!this.list.length) return;
    this.place = (place + this.list.length) % this.list.length;
    this.key = name(this.current);
    this.pick = 0;
    this.jump(false);
    this.render();
  }

  jump(playing) {
    const doubt = this.current;
    if (!doubt) return;
    this.desk.choose(doubt.hole, doubt.at_s);
    if (playing) this.desk.player.video.play().catch(() => {});
  }
}

const name = (doubt) => `${doubt.hole}/${doubt.stroke}/${doubt.field}/${doubt.text}`;
