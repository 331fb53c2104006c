import { test } from 'vitest';
import { solveNetwork, type Edge } from '../src/circuit/network.js';
const j = {"slope":0.02569257912108585,"logSaturation":-11.69517686067577,"series":0.001,"referenceCurrent":0.02,"perKelvin":-0.002,"referenceTemperature":25};
test('x', () => {
 const edges: Edge[] = [{"from":0,"to":1,"branch":{"resistance":1,"drop":0,"junctions":[j]}},{"from":1,"to":2,"branch":{"resistance":1,"drop":0,"junctions":[]}},{"from":2,"to":3,"branch":{"resistance":1,"drop":0.1,"junctions":[]}},{"from":4,"to":3,"branch":{"resistance":1,"drop":0,"junctions":[]}}];
 const v = [2.2675658272917646e-8,0,0,3.2426534096882e-7,0,0];
 try { const f = solveNetwork(3, edges, v); console.log(v, f); } catch (e) { console.log(String(e), v); }
});
