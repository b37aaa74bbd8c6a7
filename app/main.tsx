import { StrictMode } from "react";
import { createRoot } from "react-dom/client";

const root = document.getElementById("root");
if (!root) throw new Error('index.html has no element with the id "root"');

createRoot(root).render(
  <StrictMode>
    <main>
      <h1>Copperband</h1>
      <p>
        A drawing aid, not an approval. The local code as adopted and amended, the authority having jurisdiction and a
        licensed electrician decide.
      </p>
    </main>
  </StrictMode>,
);
