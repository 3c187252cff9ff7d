import { GALLERY_HREF } from '../hrefs.ts';
import { Sheet } from '../parts/Sheet.tsx';
import { ACTIONS } from './all.ts';
import './keyHelp.css';
import { isSingleKey, sayKeys } from './keys.ts';
import type { KeyHelpState } from './useActions.ts';

const isMac = () => /Mac|iPhone|iPad/.test(navigator.platform);

function Keys({ combination, isOff }: { readonly combination: string; readonly isOff: boolean }) {
  return <kbd className={isOff ? 'is-off' : undefined}>{sayKeys(combination, isMac())}</kbd>;
}

/** Every action with its keys, and the switch for those that are one letter. */
export function KeyHelp({ isOpen, close, maySingle, setSingle }: KeyHelpState) {
  return (
    <Sheet isOpen={isOpen} title="Keys" onClose={close}>
      <ul className="key-help">
        {ACTIONS.map(({ id, label, keys }) => (
          <li key={id}>
            <span>{label}</span>
            <span className="key-help-keys">
              {keys.map((combination) => (
                <Keys key={combination} combination={combination} isOff={isSingleKey(combination) && !maySingle} />
              ))}
            </span>
          </li>
        ))}
        <li>
          <span>In a field: a little more, a little less</span>
          <span className="key-help-keys">
            <kbd>↑</kbd>
            <kbd>↓</kbd>
          </span>
        </li>
        <li>
          <span>In a field: keep it, or take it back</span>
          <span className="key-help-keys">
            <kbd>Enter</kbd>
            <kbd>Esc</kbd>
          </span>
        </li>
      </ul>
      <label className="key-help-switch">
        <input type="checkbox" checked={maySingle} onChange={(event) => setSingle(event.currentTarget.checked)} />
        <span>Keys of one letter. Turn them off if you speak to this device, or if they get in your way.</span>
      </label>
      <p className="key-help-note">Inside a field every key is the field’s own, undo included.</p>
      <p className="key-help-note">
        For whoever builds or reviews screens: <a href={GALLERY_HREF}>every part of them in one gallery</a>.
      </p>
    </Sheet>
  );
}
