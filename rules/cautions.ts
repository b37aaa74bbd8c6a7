/** What every report says before anything else, whoever reads it and wherever it is shown. */

export const CAUTIONS: readonly string[] = [
  "This is a drawing aid, not an approval. People are killed by badly bonded pools.",
  "The local code as adopted and amended, the authority having jurisdiction and a licensed electrician decide.",
  "Whatever is uncertain stands here as a question, never as a pass.",
  "Judged by the one edition named in this report, restated in our own words, with only the local amendments listed.",
  "Each finding says how well its numbers are founded: published, one source, memory or judgement.",
];
