/** The picture that the plan is drawn over: beneath the canvas, moved and turned with the view, never picked. */
import { useEffect, useRef } from "react";
import { useDocument, useEditor } from "../editor-context.tsx";
import { placeOf } from "../underlay/place-underlay.ts";

/** As strong as it shows when the site does not say. */
export const UNDERLAY_STRENGTH = 0.45;

export function UnderlayPicture({ width, height }: { readonly width: number; readonly height: number }) {
  const editor = useEditor();
  const underlay = useDocument((state) => state.shown.underlay);
  const picture = useRef<HTMLImageElement>(null);
  useEffect(() => {
    const image = picture.current;
    if (!image || !underlay) return;
    const corner = placeOf(underlay, [0, 0]);
    const follow = () => {
      const { camera } = editor.view.getState();
      const x = width / 2 + (corner[0] - camera.x) * camera.scale;
      const y = height / 2 - (corner[1] - camera.y) * camera.scale;
      const scale = underlay.inchesPerPixel * camera.scale;
      image.style.transform = `translate(${x}px, ${y}px) rotate(${-(underlay.turn ?? 0)}deg) scale(${scale})`;
    };
    follow();
    return editor.view.subscribe((state, before) => {
      if (state.camera !== before.camera) follow();
    });
  }, [editor, underlay, width, height]);
  if (!underlay || underlay.hidden === true) return null;
  return (
    <img
      ref={picture}
      className="underlay-picture"
      src={underlay.picture}
      width={underlay.width}
      height={underlay.height}
      alt=""
      draggable={false}
      style={{ opacity: underlay.strength ?? UNDERLAY_STRENGTH }}
    />
  );
}
