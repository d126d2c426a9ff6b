module example.org/floewright

go 1.25

require (
	github.com/google/go-cmp v0.7.0 // tests
	gonum.org/v1/gonum v0.17.0
)
