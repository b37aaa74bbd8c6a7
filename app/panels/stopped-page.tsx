/** What stands in place of the page when it broke: why, and the ways on. The document itself lives outside of the page. */
import { useEditor } from "../editor-context.tsx";

export function StoppedPage({ failure }: { readonly failure: Error }) {
  const { files } = useEditor();
  return (
    <main className="part-missing" role="alert">
      <h1>The page stopped</h1>
      <p className="problem">{failure.message}</p>
      <p>The site is still here. Save it to a file, then load the page anew.</p>
      <p>
        <button type="button" className="strong" onClick={() => void files.save()}>
          Save the site
        </button>{" "}
        <button type="button" onClick={() => window.location.reload()}>
          Load the page anew
        </button>
      </p>
    </main>
  );
}
