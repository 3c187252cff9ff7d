/** Has the browser save a text as a file. */
export function saveText(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the address by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
