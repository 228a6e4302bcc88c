// SPDX-License-Identifier: Apache-2.0
// Records a drawing that runs through once into a video file, by the browser's own recorder.
import { download } from "./dom";

export interface Clip {
  width: number;
  height: number;
  seconds: number;
  name: string;
  draw: (pen: CanvasRenderingContext2D, share: number) => void; // share 0..1 of the way
}

const kinds = ["video/webm;codecs=vp9", "video/webm;codecs=vp8", "video/webm", "video/mp4"];
const hold_seconds = 0.8; // of the last picture
const pictures_a_second = 30;

/** Throws an error with a sentence for the reader when the browser cannot record. */
export async function record_clip(clip: Clip): Promise<void> {
  const canvas = document.createElement("canvas");
  canvas.width = clip.width;
  canvas.height = clip.height;
  const pen = canvas.getContext("2d");
  const kind = typeof MediaRecorder === "undefined" ? undefined : kinds.find((each) => MediaRecorder.isTypeSupported(each));
  if (!pen || !kind || !canvas.captureStream)
    throw new Error("This browser cannot record a clip. Save pictures at a few moments instead.");
  clip.draw(pen, 0);
  const stream = canvas.captureStream(pictures_a_second);
  const recorder = new MediaRecorder(stream, { mimeType: kind, videoBitsPerSecond: 6_000_000 });
  const pieces: Blob[] = [];
  recorder.addEventListener("dataavailable", (event) => pieces.push(event.data));
  const finished = new Promise<void>((done, fail) => {
    recorder.addEventListener("stop", () => done());
    recorder.addEventListener("error", () => fail(new Error("The recorder of this browser failed. Save pictures instead.")));
  });
  recorder.start();
  const start = performance.now();
  await new Promise<void>((done) => {
    const timer = setInterval(() => {
      const seconds = (performance.now() - start) / 1000;
      clip.draw(pen, Math.min(1, seconds / clip.seconds));
      if (seconds < clip.seconds + hold_seconds) return;
      clearInterval(timer);
      done();
    }, 1000 / pictures_a_second);
  });
  recorder.stop();
  await finished;
  for (const track of stream.getTracks()) track.stop();
  const blob = new Blob(pieces, { type: kind });
  if (blob.size === 0) throw new Error("The recorder of this browser gave an empty clip. Save pictures instead.");
  download(`${clip.name}.${kind.startsWith("video/mp4") ? "mp4" : "webm"}`, blob);
}
