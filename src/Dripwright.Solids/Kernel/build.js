// Turns the description of a solid (a tree, lengths in mm) into a triangle mesh with the manifold-3d kernel.
import load from 'manifold.js';

let kernel;

globalThis.startKernel = wasm => load({
  // The bytes come from us, so nothing is fetched, and the start needs no event loop.
  instantiateWasm: (imports, done) => {
    done(new WebAssembly.Instance(new WebAssembly.Module(wasm), imports));
    return {};
  },
}).then(module => {
  module.setup();
  kernel = module;
});

globalThis.kernelReady = () => kernel !== undefined;

globalThis.buildMesh = (text, smallest) => {
  const {Manifold} = kernel;
  const made = [];
  const keep = solid => {
    made.push(solid);
    return solid;
  };
  const build = node => {
    switch (node.kind) {
      case 'extrusion':
        return keep(Manifold.extrude(node.loops, node.height));
      case 'taper':
        return keep(Manifold.extrude([node.base], node.height, 0, 0, [node.scale, node.scale]));
      case 'lathe':
        // Turned so that the first facet, not the first edge, faces x.
        return keep(keep(Manifold.revolve([node.outline], node.sides)).rotate([0, 0, 180 / node.sides]));
      case 'hull':
        return keep(Manifold.hull(node.parts.map(build)));
      case 'moved':
        return keep(build(node.part).transform(node.matrix));
      case 'union':
        return keep(Manifold.union(node.parts.map(build)));
      case 'difference':
        return keep(Manifold.difference([build(node.from), ...node.cuts.map(build)]));
    }
    throw new Error(`unknown kind of solid: ${node.kind}`);
  };
  try {
    // Edges shorter than a printer or a single-precision file can tell are drawn together; as one original, so that edges
    // between what were different parts are not spared.
    const solid = keep(keep(build(JSON.parse(text)).asOriginal()).simplify(smallest));
    const status = solid.status();
    const mesh = solid.getMesh();
    return {status: String(status), places: mesh.vertProperties, width: mesh.numProp, triangles: mesh.triVerts};
  } finally {
    made.forEach(solid => solid.delete());
  }
};
