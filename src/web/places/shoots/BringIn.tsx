import { useId } from 'react';

export interface BringInProps {
  readonly isBusy: boolean;
  readonly onFile: (file: File) => void;
}

/** Brings a shoot in from a file; it can also be dropped anywhere on the list. */
export function BringIn({ isBusy, onFile }: BringInProps) {
  const id = useId();
  return (
    <div className="shoots-form">
      <h2>Bring one in</h2>
      <p id={`${id}-says`}>
        A shoot as a YAML or JSON file, or a zip of one with its files. It is kept as it is written, comments and all;
        what cannot be read is listed, not lost.
      </p>
      <label className="file-button button plain" htmlFor={id}>
        Choose a file
        <input
          id={id}
          className="hidden-text"
          type="file"
          accept=".yaml,.yml,.json,.zip,text/yaml,application/yaml,application/json,application/zip"
          disabled={isBusy}
          aria-describedby={`${id}-says`}
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            // The same file may be chosen again once it was mended.
            event.currentTarget.value = '';
            if (file) onFile(file);
          }}
        />
      </label>
      <p className="shoots-hint">or drop it on this page</p>
    </div>
  );
}
