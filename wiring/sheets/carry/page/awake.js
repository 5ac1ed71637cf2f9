// A phone lying under the layout should not go dark between two wires; not every browser lets a page ask.
function stayAwake() {
  const ask = () => {
    if (document.visibilityState === "visible" && navigator.wakeLock) navigator.wakeLock.request("screen").catch(() => {});
  };
  document.addEventListener("visibilitychange", ask);
  ask();
}
