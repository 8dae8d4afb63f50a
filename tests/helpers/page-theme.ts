/** The app's colours on the test page, so that contrast is judged as people see it. Gives the function that takes them off. */
export async function withTheme(scheme: 'light' | 'dark'): Promise<() => void> {
  const answer = await fetch('/src/views/theme.css');
  if (!answer.ok) throw new Error(`The theme could not be read: ${answer.status}`);
  const style = document.createElement('style');
  // Fonts have no colour, and their imports only resolve in a build.
  style.textContent = (await answer.text()).replace(/@import[^;]+;/g, '');
  document.head.append(style);
  document.documentElement.style.colorScheme = scheme;
  document.body.style.background = 'var(--paper)';
  return () => {
    style.remove();
    document.documentElement.style.colorScheme = '';
    document.body.style.background = '';
  };
}
