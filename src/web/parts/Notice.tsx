import { Button } from './Button.tsx';
import { Icon } from './Icon.tsx';
import './notice.css';

export interface NoticeProps {
  readonly says: string;
  readonly action?: { readonly label: string; readonly onPress: () => void };
  readonly onDismiss: () => void;
}

/** One line that says what was just done and how to take it back. It stays until put away or overtaken. */
export function Notice({ says, action, onDismiss }: NoticeProps) {
  return (
    <div className="notice no-print" role="status">
      <span className="notice-says">{says}</span>
      {action && (
        <Button look="quiet" className="notice-action" onClick={action.onPress}>
          {action.label}
        </Button>
      )}
      <Button look="sign" aria-label="Put this notice away" onClick={onDismiss}>
        <Icon name="close" />
      </Button>
    </div>
  );
}
