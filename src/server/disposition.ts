/** The header that says whether a file is shown or saved, and under which name (RFC 6266). */

const LONGEST_NAME = 120;

/** A name as any system can keep it: no path, no character that a system or a shell minds, never hidden. */
export function savedName(name: string): string {
  const plain = name
    .replace(/\p{Surrogate}/gu, '')
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}/\\:*?"<>|]/gu, '-')
    .trim()
    .replace(/^\.+/, '');
  // The end is kept: it tells the kind.
  const short = [...plain].slice(-LONGEST_NAME).join('').trim().replace(/^\.+/, '');
  return short === '' ? 'file' : short;
}

/** Both the plain and the encoded name, as older programs read only the first. */
export function disposition(how: 'inline' | 'attachment', name: string): string {
  const saved = savedName(name);
  const plain = saved.replace(/[^\x20-\x7e]|[%']/g, '_');
  const encoded = encodeURIComponent(saved).replace(
    /['()*]/g,
    (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `${how}; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
