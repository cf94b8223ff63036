// The address after '#' and the back gesture. Each step of ours carries its depth, so that going
// back never leaves the page by surprise when the app was started deep inside.

const depth = () => history.state?.depth ?? 0;
const address = (route) => route ? '#' + route : location.pathname + location.search;

export const currentRoute = () => {
  try { return decodeURIComponent(location.hash.slice(1)); } catch { return location.hash.slice(1); }
};

export function followRoutes(onChange) {
  addEventListener('popstate', () => onChange(currentRoute()));
  return {
    push(route) { history.pushState({ depth: depth() + 1 }, '', address(route)); },
    replace(route) { history.replaceState({ depth: depth() }, '', address(route)); },
    back() {
      if (depth() > 0) { history.back(); return; }
      history.replaceState({ depth: 0 }, '', address(''));
      onChange('');
    },
  };
}
