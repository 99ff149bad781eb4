// One recording: what the recorder gives goes to the sender; pauses, marks and stills carry its clock.

import { send } from "/assets/ask.js";
import { tell } from "/assets/tell.js";
import { clock } from "./marks.js";
import { Recorder, stillOf } from "./recorder.js";
import { Sender } from "./sender.js";

const TICK = 200;
const SLOW = 3;

/** Dispatches "show" when something is to be shown anew, "ended" with the server's answer. */
export class Session extends EventTarget {
  constructor(stream, reserve, marks, largest) {
    super();
    this.reserve = reserve;
    this.marks = marks;
    this.largest = largest;
    this.recorder = new Recorder(stream);
    this.state = "preparing";
    this.problem = null;
    this.room = null;
  }

  /** Have the server make the session, then record. Throws a `Refusal`. */
  async begin(told) {
    const begun = await send("/record/begin", { ...told, mime: this.recorder.mime });
    this.slug = begun.slug;
    this.title = begun.title;
    this.room = begun.room;
    this.sender = new Sender(this.slug, this.reserve, this.largest);
    this.listen();
    await this.keepFacts();
    await this.recorder.start();
    this.state = "recording";
    this.ticking = setInterval(() => this.show(), TICK);
    tell("Recording.");
  }

  listen() {
    this.recorder.addEventListener("piece", ({ detail }) => this.sender.add(detail.blob, detail.second));
    this.recorder.addEventListener("lost", () => this.lose());
    this.sender.addEventListener("kept", ({ detail }) => {
      this.room = detail.room;
      if (this.room.state === "none") {
        this.end();
      }
    });
    this.sender.addEventListener("trouble", ({ detail }) => {
      this.problem = detail;
      this.show();
    });
    this.sender.addEventListener("well", () => {
      this.problem = null;
      tell("The server has all of it again.");
      this.show();
    });
    this.sender.addEventListener("unreserved", () => {
      this.unreserved = true;
    });
    this.marks.addEventListener("change", () => {
      this.keepFacts();
      this.sender.sendMarks(this.marks.marks);
    });
  }

  keepFacts() {
    const take = { slug: this.slug, title: this.title, marks: this.marks.marks };
    return this.reserve.keepTake(take).catch(() => {
      this.unreserved = true;
    });
  }

  /** The recording's clock, as it is read. */
  get clock() {
    return clock(this.recorder.second);
  }

  /** How far the disk has it. */
  get keptLine() {
    const behind = this.recorder.second - this.sender.reached;
    if (this.state === "ending") {
      return "Giving the recording its length and index.";
    }
    return behind > SLOW && this.state === "recording" ? `On the disk up to ${clock(this.sender.reached)}.` : "All of it is on the disk.";
  }

  /** What the browser does while the server is away. */
  get reserveLine() {
    const held = `The recording goes on: ${Math.ceil(this.sender.behind)} s wait in this ${this.reserve.works && !this.unreserved ? "browser" : "page"}.`;
    return `${this.state === "ending" ? "What was recorded waits here." : held} Do not close this page.`;
  }

  pause() {
    this.recorder.pause();
    this.state = "paused";
  }

  resume() {
    this.recorder.resume();
    this.state = "recording";
  }

  mark() {
    this.marks.add(this.recorder.second);
  }

  async still(view) {
    const second = this.recorder.second;
    try {
      this.sender.sendStill(await stillOf(view), second);
      tell(`Still taken at ${clock(second)}.`);
    } catch (error) {
      tell(String(error.message));
    }
  }

  /** End the recording; what is not yet on the disk is sent first, however long that takes. */
  async end() {
    if (this.state === "ending") {
      return;
    }
    this.state = "ending";
    this.show();
    await this.recorder.stop();
    const told = await this.sender.end(this.recorder.second);
    clearInterval(this.ticking);
    this.state = "ended";
    await this.reserve.dropTake(this.slug).catch(() => {});
    this.dispatchEvent(new CustomEvent("ended", { detail: told }));
  }

  lose() {
    if (this.state !== "ending" && this.state !== "ended") {
      tell("The microphone or the camera went away. The recording was ended there; all of it is kept.");
      this.end();
    }
  }

  show() {
    this.dispatchEvent(new Event("show"));
  }
}
