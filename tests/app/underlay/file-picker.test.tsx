// @vitest-environment happy-dom
/** A picture is read while another one is asked for. */
import { act } from "react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { FilePicker } from "../../../app/underlay/file-picker.tsx";
import type { PictureRead } from "../../../app/underlay/read-picture.ts";
import type { Site } from "../../../rules/site/site.ts";
import { type Bench, bench } from "../panels/panel-bench.tsx";

const reading: ((read: PictureRead) => void)[] = [];
vi.mock("../../../app/underlay/read-picture.ts", () => ({
  readPicture: () => new Promise<PictureRead>((resolve) => reading.push(resolve)),
}));

const site = { format: "copperband-site", version: 1, elements: [] } as unknown as Site;
const page = (name: string): PictureRead => ({
  ok: true,
  pages: 3,
  picture: { name, picture: `data:image/jpeg;base64,${name}`, width: 100, height: 80 },
});

let shown: Bench | null = null;
afterEach(() => {
  shown?.close();
  shown = null;
  reading.length = 0;
});

describe("a page of a PDF", () => {
  it("that was asked for last is taken, whichever is read first", async () => {
    const read: string[] = [];
    shown = bench(site);
    shown.show(<FilePicker onRead={({ name }) => read.push(name)} />);
    const input = shown.query("input[type=file]");
    Object.defineProperty(input, "files", { value: [new File(["x"], "plan.pdf", { type: "application/pdf" })] });
    shown.does(() => {
      input.dispatchEvent(new Event("change", { bubbles: true }));
    });
    const settle = (index: number, name: string) =>
      act(async () => {
        reading[index]?.(page(name));
      });
    await settle(0, "first");
    expect(read).toEqual(["first"]);
    for (const wanted of ["2", "3"]) shown.type(shown.query("input[type=number]"), wanted);
    expect(reading).toHaveLength(3);
    await settle(2, "third");
    await settle(1, "second");
    expect(read).toEqual(["first", "third"]);
  });
});
