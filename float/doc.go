// Package float answers how a dock on drums floats: its sinkage, heel and trim
// under any load, exact at finite angles, and how far it is from trouble.
package float
