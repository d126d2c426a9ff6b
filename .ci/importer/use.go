// This program stands for a stranger's: it imports every public package, calls
// each function and each method of a zero value with zero arguments, which must
// not panic, and makes the real calls of the files beside it.
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"reflect"
	"slices"
	"strings"
	"time"
)

// A named is a function, or a pointer to a zero value of a type.
type named struct {
	name string
	item any
}

// A call is one real use of a package; it returns what it computed, in words.
type call struct {
	name string
	do   func() (string, error)
}

var calls []call

func main() {
	// Zero arguments are quick to refuse: what takes a minute hangs.
	time.AfterFunc(time.Minute, func() {
		fmt.Println("a call did not return within a minute")
		os.Exit(1)
	})
	failed, tried, left := false, 0, 0
	try := func(name string, f reflect.Value) {
		switch ran, panicked := zero(f); {
		case panicked != nil:
			fmt.Printf("%s panics with zero arguments: %v\n", name, panicked)
			failed = true
		case ran:
			tried++
		default:
			left++
		}
	}
	for _, f := range functions {
		try(f.name, reflect.ValueOf(f.item))
	}
	for _, t := range types {
		v := reflect.ValueOf(t.item)
		for i := range v.NumMethod() {
			try(t.name+"."+v.Type().Method(i).Name, v.Method(i))
		}
	}
	fmt.Printf("called %d functions and methods with zero arguments; %d left, since they take functions, pointers or interfaces\n", tried, left)

	slices.SortFunc(calls, func(a, b call) int { return strings.Compare(a.name, b.name) })
	for _, c := range calls {
		words, err := c.do()
		if err != nil {
			fmt.Printf("%s: %v\n", c.name, err)
			failed = true
			continue
		}
		fmt.Printf("%s: %s\n", c.name, words)
	}
	if len(calls) == 0 || failed {
		os.Exit(1)
	}
}

// zero calls f with zero arguments and reports whether it could, and what it
// panicked with. Readers are empty, writers discard, contexts never end; other
// interfaces, functions, channels and pointers have no zero value that a caller
// would pass.
func zero(f reflect.Value) (ran bool, panicked any) {
	t := f.Type()
	n := t.NumIn()
	if t.IsVariadic() {
		n--
	}
	args := make([]reflect.Value, n)
	for i := range args {
		in := t.In(i)
		switch in.Kind() {
		case reflect.Interface:
			var stand any
			switch in {
			case reflect.TypeFor[context.Context]():
				stand = context.Background()
			case reflect.TypeFor[io.Reader]():
				stand = strings.NewReader("")
			case reflect.TypeFor[io.Writer]():
				stand = io.Discard
			default:
				return false, nil
			}
			args[i] = reflect.ValueOf(stand)
		case reflect.Func, reflect.Pointer, reflect.Chan, reflect.UnsafePointer:
			return false, nil
		default:
			args[i] = reflect.Zero(in)
		}
	}
	defer func() { panicked = recover() }()
	f.Call(args)
	return true, nil
}
