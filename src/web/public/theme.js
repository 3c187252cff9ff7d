// Before the first paint, so that a stage kept dark never flashes white.
try {
  const theme = localStorage.getItem('longsecond.theme');
  if (theme === 'light' || theme === 'dark' || theme === 'stage') document.documentElement.dataset.theme = theme;
} catch {
  // Storage may be shut; the system's own scheme then holds.
}
