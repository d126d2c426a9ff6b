package sheet

import "example.org/floewright/internal/svg"

// Watch lets a test see every drawing that is finished.
func Watch(see func(*svg.Drawing)) (stop func()) {
	watch = see
	return func() { watch = nil }
}
