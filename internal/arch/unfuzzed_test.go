package arch

// notFuzzed lists the entries that take data and that no fuzz target mentions, with the
// reason. A name that is fuzzed after all, or is gone, has to leave it.
var notFuzzed = map[string]string{}
