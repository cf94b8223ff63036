'use strict';
createBlank({
  canvas: document.getElementById('canvas'),
  instantiateWasm(imports, done) {
    WebAssembly.compileStreaming(fetch('blank.wasm'))
      .then((module) => WebAssembly.instantiate(module, imports))
      .then(done);
    return {};
  },
});
