import { type FileEntry, type FileKind, routes } from "@tidewright/protocol";
import { useState } from "react";
import { ask } from "../api/ask.ts";
import { Sheet } from "../bench/Sheet.tsx";
import { FileDrop } from "../fields/FileChoice.tsx";
import { newId } from "../keeping/newId.ts";
import { useWords } from "../words/useWords.ts";
import { refusalWords } from "./refusalWords.ts";
import { useAsked } from "./useAsked.ts";
import { sizeWords, whenWords } from "./whenWords.ts";

interface Props {
  readonly jobId: string;
  readonly readOnly: boolean;
}

interface Upload {
  readonly key: string;
  readonly name: string;
  readonly problem: string | undefined;
}

/** Photos and papers of a job: drop or choose, look at, take away. */
export function JobFiles({ jobId, readOnly }: Props) {
  const words = useWords();
  const { say } = words;
  const { value, failed, again } = useAsked(
    `files ${jobId}`,
    () => ask(routes.filesOfJob, { params: { jobId } }),
    (change) => change.kind === "file" && change.jobId === jobId,
  );
  const [uploads, setUploads] = useState<readonly Upload[]>([]);
  const [removing, setRemoving] = useState<FileEntry>();
  const files = value?.items ?? [];
  const pictures = files.filter(isPicture);
  const papers = files.filter((file) => !isPicture(file));

  const upload = async (chosen: readonly File[]) => {
    for (const file of chosen) {
      const key = newId();
      const name = file.name.slice(-200) || "file";
      setUploads((all) => [...all, { key, name, problem: undefined }]);
      const kind = kindOf(file);
      const answer = await ask(routes.putFileOfJob, { params: { jobId }, query: { kind, name }, body: file });
      setUploads((all) =>
        answer.ok
          ? all.filter((each) => each.key !== key)
          : all.map((each) => (each.key === key ? { ...each, problem: refusalWords(answer, words) } : each)),
      );
      if (answer.ok) await again();
    }
  };
  const remove = async (file: FileEntry) => {
    const answer = await ask(routes.removeFile, { params: { fileId: file.id } });
    setRemoving(undefined);
    if (!answer.ok)
      setUploads((all) => [...all, { key: file.id, name: file.name, problem: refusalWords(answer, words) }]);
    await again();
  };
  return (
    <section className="desk-block job-files">
      <h2>{say("desk.files")}</h2>
      {failed !== undefined && value === undefined ? (
        <p className="field-problem">{refusalWords(failed, words)}</p>
      ) : null}
      {readOnly ? null : (
        <FileDrop
          label={say("desk.addFiles")}
          accept="image/jpeg,image/png,image/webp,image/heic,image/avif,application/pdf,.csv,.xlsx"
          multiple
          onFiles={(chosen) => void upload(chosen)}
        >
          <div className="quiet">
            <p>{say("desk.filesHint")}</p>
            <p>{say("desk.photosBare")}</p>
          </div>
        </FileDrop>
      )}
      <ul className="uploads" aria-live="polite">
        {uploads.map((each) => (
          <li key={each.key} className={each.problem === undefined ? "quiet" : "field-problem"}>
            <span className="file-name">{each.name}</span>: {each.problem ?? say("desk.uploading")}
            {each.problem === undefined ? null : (
              <button
                type="button"
                className="tool"
                onClick={() => setUploads((all) => all.filter(({ key }) => key !== each.key))}
              >
                {say("desk.dismiss")}
              </button>
            )}
          </li>
        ))}
      </ul>
      {value !== undefined && files.length === 0 && readOnly ? <p className="quiet">{say("desk.noFiles")}</p> : null}
      <ul className="pictures">
        {pictures.map((file) => (
          <li key={file.id}>
            <a href={addressOf(file)} target="_blank" rel="noreferrer">
              <img src={addressOf(file)} alt={file.name} loading="lazy" decoding="async" />
            </a>
            <FileLine file={file} readOnly={readOnly} onRemove={setRemoving} />
          </li>
        ))}
      </ul>
      <ul className="papers">
        {papers.map((file) => (
          <li key={file.id}>
            <a className="plain-link file-name" href={addressOf(file)} download={file.name}>
              {file.name}
            </a>
            <FileLine file={file} readOnly={readOnly} onRemove={setRemoving} bare />
          </li>
        ))}
      </ul>
      <Sheet
        name="remove-file"
        title={say("desk.removeFileTitle")}
        open={removing !== undefined}
        onClose={() => setRemoving(undefined)}
      >
        {removing === undefined ? null : (
          <>
            <p>{say("desk.removeFileExplain", { name: removing.name })}</p>
            <p className="sheet-actions">
              <button type="button" className="action" onClick={() => setRemoving(undefined)}>
                {say("desk.keepIt")}
              </button>
              <button type="button" className="action action-warn" onClick={() => void remove(removing)}>
                {say("desk.removeFile")}
              </button>
            </p>
          </>
        )}
      </Sheet>
    </section>
  );
}

interface LineProps {
  readonly file: FileEntry;
  readonly readOnly: boolean;
  readonly onRemove: (file: FileEntry) => void;
  readonly bare?: boolean;
}

function FileLine({ file, readOnly, onRemove, bare = false }: LineProps) {
  const words = useWords();
  return (
    <div className="file-line">
      <p>
        {bare ? null : <span className="file-name">{file.name}</span>}
        <span className="quiet">
          {sizeWords(file.size, words)} · {whenWords(file.at, new Date(), words)}
        </span>
      </p>
      {readOnly ? null : (
        <button
          type="button"
          className="icon-button"
          aria-label={words.say("desk.removeFileNamed", { name: file.name })}
          onClick={() => onRemove(file)}
        >
          ×
        </button>
      )}
    </div>
  );
}

/** What a file is for, by what it says it is; what it really is, the server finds from its content. */
function kindOf({ type, name }: File): FileKind {
  if (type.startsWith("image/")) return "photo";
  return /\.(csv|xlsx)$/i.test(name) ? "chart" : "paper";
}

const isPicture = (file: FileEntry) => /^image\/(jpeg|png|webp|gif|avif)$/.test(file.contentType);
/** Where a file's bytes are; relative, so that the page can be served from any path. */
export const addressOf = (file: Pick<FileEntry, "id">) => `api/files/${encodeURIComponent(file.id)}`;
