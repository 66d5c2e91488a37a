// Node 20 lacks Object.groupBy, which Langium and Chevrotain call.
import 'core-js/actual/object/group-by.js';
import 'core-js/actual/map/group-by.js';
