// A MediaRecorder (W3C MediaStream Recording) with a clock that stands still while it is paused.

const SLICE = 1000;
const RATES = { audioBitsPerSecond: 128_000, videoBitsPerSecond: 2_500_000 };
const FILM = ["video/webm;codecs=vp8,opus", "video/webm", "video/mp4"];
const SOUND = ["audio/webm;codecs=opus", "audio/ogg;codecs=opus", "audio/mp4"];

/** Dispatches "piece" with a blob and the second it reaches, and "lost" when the microphone or camera goes away. */
export class Recorder extends EventTarget {
  constructor(stream) {
    super();
    this.stream = stream;
    const forms = stream.getVideoTracks().length ? FILM : SOUND;
    this.mime = forms.find((one) => MediaRecorder.isTypeSupported(one));
    if (!this.mime) {
      throw new Error("This browser records in no form that can be kept. Use another browser.");
    }
    this.recorder = new MediaRecorder(stream, { mimeType: this.mime, ...RATES });
    this.before = 0;
    this.since = null;
    this.recorder.addEventListener("dataavailable", (event) => {
      if (event.data.size) {
        this.dispatchEvent(new CustomEvent("piece", { detail: { blob: event.data, second: this.second } }));
      }
    });
    this.stopped = new Promise((resolve) => this.recorder.addEventListener("stop", resolve, { once: true }));
    this.recorder.addEventListener("error", () => this.lose());
    stream.getTracks().forEach((track) => track.addEventListener("ended", () => this.lose()));
  }

  /** Seconds recorded so far. */
  get second() {
    return this.before + (this.since === null ? 0 : (performance.now() - this.since) / 1000);
  }

  /** Begin; resolves when sound is being recorded. */
  async start() {
    const begun = new Promise((resolve) => this.recorder.addEventListener("start", resolve, { once: true }));
    this.recorder.start(SLICE);
    await begun;
    this.since = performance.now();
  }

  /** Leave out what follows. */
  pause() {
    this.recorder.requestData();
    this.recorder.pause();
    this.before = this.second;
    this.since = null;
  }

  /** Record again. */
  resume() {
    this.recorder.resume();
    this.since = performance.now();
  }

  /** End; resolves when the last piece was handed out. */
  async stop() {
    this.before = this.second;
    this.since = null;
    if (this.recorder.state !== "inactive") {
      this.recorder.stop();
    }
    await this.stopped;
  }

  lose() {
    if (!this.gone) {
      this.gone = true;
      this.dispatchEvent(new Event("lost"));
    }
  }
}

/** The picture that a camera shows now, as a JPEG. */
export function stillOf(video) {
  const canvas = document.createElement("canvas");
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext("2d").drawImage(video, 0, 0);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("The camera gave no picture."))), "image/jpeg", 0.92);
  });
}
