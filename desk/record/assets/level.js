// Whether the sound is loud enough: the judgement of capture/recording/level.py, with the same bounds, and its picture.

const STEP = 100;

/** An amplitude between 0 and 1 in decibels below full scale. */
export function decibels(amplitude) {
  return 20 * Math.log10(Math.max(amplitude, 1e-6));
}

/** What came in over the last seconds. */
export class Level {
  constructor(bounds) {
    this.bounds = bounds;
    this.loud = [];
    this.clippedAt = -Infinity;
    this.began = null;
  }

  /** Take in a tenth of a second, in dBFS: "nothing", "quiet", "clipped" or "good". */
  hear(second, power, peak) {
    const { bounds } = this;
    this.began ??= second;
    this.loud.push([second, power]);
    while (this.loud[0][0] < second - bounds.quiet_after) {
      this.loud.shift();
    }
    if (peak >= bounds.clipped) {
      this.clippedAt = second;
    }
    if (second - this.clippedAt <= bounds.clipped_told) {
      return "clipped";
    }
    if (second - this.began < bounds.quiet_after) {
      return "good";
    }
    const loudest = Math.max(...this.loud.map(([, heard]) => heard));
    return loudest < bounds.nothing ? "nothing" : loudest < bounds.quiet ? "quiet" : "good";
  }
}

/** Shows the level of a stream as a rule with a pointer, and says it in words when the judgement changes. */
export class Meter {
  constructor(place, bounds, words) {
    this.place = place;
    this.bounds = bounds;
    this.words = words;
    this.verdict = null;
    graduate(place.querySelector("#graduations"), bounds.scale_from);
  }

  /** Listen to a stream in the place of the last one. */
  async watch(stream) {
    this.leave();
    this.context = new AudioContext();
    const analyser = new AnalyserNode(this.context, { fftSize: 8192 });
    this.context.createMediaStreamSource(stream).connect(analyser);
    const level = new Level(this.bounds);
    const samples = new Float32Array(Math.min(analyser.fftSize, Math.round((this.context.sampleRate * STEP) / 1000)));
    this.timer = setInterval(() => {
      analyser.getFloatTimeDomainData(samples);
      const peak = decibels(samples.reduce((most, one) => Math.max(most, Math.abs(one)), 0));
      const power = decibels(Math.sqrt(samples.reduce((sum, one) => sum + one * one, 0) / samples.length));
      this.show(level.hear(this.context.currentTime, power, peak), power, peak);
    }, STEP);
    // A page that was opened without a press on it may have to ask once more.
    await this.context.resume();
  }

  /** Stop listening. */
  leave() {
    clearInterval(this.timer);
    this.context?.close();
    this.context = null;
  }

  show(verdict, power, peak) {
    this.place.querySelector("#heard").setAttribute("width", String(along(power, this.bounds.scale_from)));
    this.place.querySelector("#peak").setAttribute("transform", `translate(${along(peak, this.bounds.scale_from)} 0)`);
    if (verdict !== this.verdict) {
      this.verdict = verdict;
      this.place.className = `level ${verdict}`;
      this.place.querySelector("#level").textContent = this.words[verdict];
    }
  }
}

function along(level, from) {
  return Math.round(598 * Math.min(Math.max(1 - level / from, 0), 1));
}

function graduate(group, from) {
  const drawing = "http://www.w3.org/2000/svg";
  for (let level = from + 5; level < 0; level += 5) {
    const long = level % 10 === 0;
    const line = document.createElementNS(drawing, "path");
    line.setAttribute("class", "graduation");
    line.setAttribute("d", `M${along(level, from)} 40v-${long ? 16 : 9}`);
    group.append(line);
    if (long) {
      const words = document.createElementNS(drawing, "text");
      words.setAttribute("x", String(along(level, from)));
      words.setAttribute("y", "54");
      words.textContent = `−${-level}`;
      group.append(words);
    }
  }
}
