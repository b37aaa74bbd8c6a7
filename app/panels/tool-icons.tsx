/** The drawing tools' own small pictures, on a field of 20 x 20, in the color of the text beside them. */
import type { ReactNode } from "react";
import type { ToolId } from "../view/view-store.ts";

/** Lines only; `solid` marks what is filled. */
const PICTURES: Readonly<Record<ToolId, ReactNode>> = {
  select: <path d="M5 3l10 7-4.6.8L13 16l-2.2 1-2.5-5.2L5 15z" />,
  pan: (
    <path d="M10 2v16M2 10h16M7.5 4.5L10 2l2.5 2.5M7.5 15.5L10 18l2.5-2.5M4.5 7.5L2 10l2.5 2.5M15.5 7.500L18 10l-2.5 2.5" />
  ),
  "pool-rectangle": (
    <>
      <rect x="2.5" y="5" width="15" height="10" rx="1" />
      <path d="M5.5 10.500q1.5-1.5 3 0t3 0 3 0" />
    </>
  ),
  "pool-outline": (
    <>
      <path d="M3 11c0-4 3-6.5 5.5-5s3.5-1.5 6 0 3.5 6 1 8.5-4.5.5-6.5 1.5-6-1-6-5z" />
      <path d="M6 11.500q1.3-1.4 2.6 0t2.6 0 2.6 0" />
    </>
  ),
  "pool-shape": (
    <>
      <path d="M2.5 5h11v2.500a2.500 2.500 0 0 1 0 5V15h-11z" />
      <path d="M5 10.500q1.3-1.4 2.6 0t2.6 0" />
    </>
  ),
  "pool-curves": (
    <path d="M3 8c0-3 2.500-4.500 5-4.500S12 5 14 5s3.500 1.500 3.500 4-3.500 2.500-3.500 4.500-2 3-5 3S3 11.500 3 8z" />
  ),
  inset: <path d="M2.5 4.500h15v11h-15zM2.5 11.500h4v-3.500h4V4.5" />,
  surface: <path d="M3 15.500L6.5 5h10L13 15.500zM5 10.200h10M9.5 5L6 15.500M13.3 5L9.7 15.5" />,
  wall: <path d="M2.5 5.500h15v9h-15zM2.5 10h15M7.5 5.500V10M13 5.500V10M5 10v4.500M10.2 10v4.500M15.3 10v4.5" />,
  building: <path d="M3 9l7-5.500L17 9v7.500H3zM8 16.500v-5h4v5" />,
  opening: <path d="M2 14.500h4M14 14.500h4M6 14.500V6.500A8 8 0 0 1 14 14.5" />,
  fence: <path d="M4 16.500V6l1.5-2L7 6v10.500M13 16.500V6l1.5-2L16 6v10.500M2 8.500h16M2 13.500h16" />,
  structure: <path d="M2.5 8h13M5 8v8.500M9.5 8v8.500M5 12.200h4.500M15.5 8q1.5-.2 2-1.5" />,
  "metal-point": <path d="M7 17V6a2 2 0 0 1 4 0M13 17V6a2 2 0 0 0-2-2M7 9.500h6M7 13h6" />,
  "metal-line": (
    <>
      <path d="M2.5 13.500l5-6 5 4 5-6" />
      <path d="M2.5 13.500h.01M7.5 7.500h.01M12.5 11.500h.01M17.5 5.500h.01" strokeWidth="3.4" strokeLinecap="round" />
    </>
  ),
  "metal-area": <path d="M3.5 5l9-1.5 4 6-3 6.5-9-1zM6.5 15L13 3.800M4 9.500l5-5.300M9.8 15.600l5.7-9.2" />,
  equipment: (
    <>
      <circle cx="8.5" cy="10" r="4.5" />
      <path d="M13 8.500h4.500v3H13M6.5 14l-1 2.500h6l-1-2.500M8.5 7.500v5M6 10h5" />
    </>
  ),
  "underwater-light": <path d="M4 4v12M4 7h3a3 3 0 0 1 0 6H4M12 10h5.500M11.5 6.500l4.5-2.500M11.5 13.500l4.5 2.5" />,
  device: (
    <>
      <rect x="4" y="3" width="12" height="14" rx="2" />
      <path d="M8 7v3.500M12 7v3.500M8.5 13.500a1.5 1.5 0 0 1 3 0z" />
    </>
  ),
  "overhead-line": <path d="M4 17V3.500M16 17V3.500M2 5.500h4M14 5.500h4M5.5 5.500q4.5 5 9 0" />,
  "underground-run": <path d="M2 6h16M5 6v4.500a3 3 0 0 0 3 3h4a3 3 0 0 0 3-3V6M7 17h.01M10 17h.01M13 17h.01" />,
  "water-bond": <path d="M10 2.500q4.5 5 4.5 8a4.5 4.5 0 0 1-9 0q0-3 4.5-8zM10 15v3M7 18h6" />,
  conductor: <path d="M2.5 14c3 0 2.5-8 6-8s2 8 5 8 2.5-4 4-4" strokeWidth="2.2" />,
  tie: (
    <>
      <path d="M2 10h4.500M13.5 10H18" />
      <path d="M10 5.500l4.5 4.5-4.5 4.500L5.5 10z" fill="currentColor" />
    </>
  ),
  "keep-out": <path d="M3.5 3.500h13v13h-13zM3.5 9l5.5-5.500M3.5 15L15 3.500M7.5 16.500l9-9M13 16.500l3.5-3.5" />,
  measure: <path d="M3 14L14 3l3 3L6 17zM6.500 10.500l1.500 1.500M9 8l1.500 1.500M11.500 5.500L13 7" />,
  dimension: <path d="M3 4v12M17 4v12M3 10h14M1.500 11.500l3-3M15.500 11.500l3-3" />,
  offset: (
    <>
      <rect x="6.5" y="7" width="7" height="6" rx="1" />
      <rect x="2.5" y="3.5" width="15" height="13" rx="2" strokeDasharray="2 2" />
    </>
  ),
  mirror: <path d="M10 2v2.500M10 7v2.500M10 12v2.500M10 17v1M7.500 6L2.500 14h5zM12.500 6l5 8h-5z" />,
  split: <path d="M2.500 10h5M12.500 10h5M10 3v3.500M10 8.500v3M10 13.500V17" />,
};

export function ToolIcon({ tool }: { readonly tool: ToolId }) {
  return (
    <svg
      className="icon"
      width="20"
      height="20"
      viewBox="0 0 20 20"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.4"
      strokeLinejoin="round"
      strokeLinecap="round"
      aria-hidden="true"
    >
      {PICTURES[tool]}
    </svg>
  );
}
