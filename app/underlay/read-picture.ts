/**
 * A picture or a page of a PDF, made small enough to be kept in the site file.
 *
 * Stages. 1. The file is drawn, at most LONGEST pixels along its longer side. 2. It is written as a picture of its own,
 * coarser until it fits; what the file held beside its picture (places, names) is not kept.
 */

export interface Picture {
  readonly name: string;
  /** A data URL. */
  readonly picture: string;
  readonly width: number;
  readonly height: number;
}

export type PictureRead =
  | { readonly ok: true; readonly picture: Picture; readonly pages: number }
  | { readonly ok: false; readonly reason: string };

const LONGEST = 2600;
/** Characters of the data URL. */
const MOST = 3_000_000;
const QUALITIES = [0.85, 0.7, 0.5, 0.3];
/** Bytes of a file that is not even tried. */
const LARGEST_FILE = 200 * 1024 * 1024;

/** Reads a file. `page`: of a PDF, counted from 1. */
export async function readPicture(file: File, page = 1): Promise<PictureRead> {
  if (file.size > LARGEST_FILE) return no(`${file.name} is larger than 200 MB. Export the page that shows the yard.`);
  const isPdf = file.type === "application/pdf" || /\.pdf$/i.test(file.name);
  try {
    const { canvas, pages } = isPdf ? await drawPage(file, page) : { canvas: await drawImage(file), pages: 1 };
    const picture = writePicture(canvas);
    if (picture === null) return no(`${file.name} does not become small enough to keep. Cut it to the yard.`);
    return { ok: true, pages, picture: { name: file.name, picture, width: canvas.width, height: canvas.height } };
  } catch (error) {
    const said = error instanceof Error ? error.message : String(error);
    return no(
      `${file.name} cannot be read as ${isPdf ? "a PDF" : "a picture"} (${said}). PNG, JPEG, WebP and PDF can.`,
    );
  }
}

async function drawImage(file: File): Promise<HTMLCanvasElement> {
  const image = await createImageBitmap(file);
  const scale = Math.min(1, LONGEST / Math.max(image.width, image.height));
  const { canvas, context } = sheetOf(image.width * scale, image.height * scale);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return canvas;
}

async function drawPage(file: File, number: number): Promise<{ canvas: HTMLCanvasElement; pages: number }> {
  const [{ getDocument, GlobalWorkerOptions }, worker] = await Promise.all([
    import("pdfjs-dist"),
    import("pdfjs-dist/build/pdf.worker.min.mjs?url"),
  ]);
  GlobalWorkerOptions.workerSrc = worker.default;
  const task = getDocument({ data: new Uint8Array(await file.arrayBuffer()), isEvalSupported: false });
  try {
    const document = await task.promise;
    const page = await document.getPage(Math.min(Math.max(1, number), document.numPages));
    const natural = page.getViewport({ scale: 1 });
    const viewport = page.getViewport({ scale: LONGEST / Math.max(natural.width, natural.height) });
    const { canvas } = sheetOf(viewport.width, viewport.height);
    await page.render({ canvas, viewport }).promise;
    return { canvas, pages: document.numPages };
  } finally {
    await task.destroy();
  }
}

/** A white sheet of so many pixels. */
function sheetOf(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D } {
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(width));
  canvas.height = Math.max(1, Math.round(height));
  const context = canvas.getContext("2d");
  if (!context) throw new Error("this browser gives no canvas");
  context.fillStyle = "white";
  context.fillRect(0, 0, canvas.width, canvas.height);
  return { canvas, context };
}

function writePicture(canvas: HTMLCanvasElement): string | null {
  for (const quality of QUALITIES) {
    const picture = canvas.toDataURL("image/jpeg", quality);
    if (picture.length <= MOST) return picture;
  }
  return null;
}

function no(reason: string): PictureRead {
  return { ok: false, reason };
}
