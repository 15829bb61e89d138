package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"strings"

	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// Exit codes.
const (
	done     = 0
	failed   = 1
	badInput = 2
)

// shell is what a command has of the world: its arguments and the three streams.
type shell struct {
	args []string
	in   io.Reader
	out  io.Writer
	err  io.Writer
}

// command is one word of the command line.
type command struct {
	name, args, what string
	run              func(shell) error
}

// run does what the arguments say and returns the exit code.
func run(args []string, s shell) int {
	act := openWindow
	s.args = args
	if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		act, s.args = find(args[0]), args[1:]
	}
	return s.exitCode(act(s))
}

func find(name string) func(shell) error {
	for _, c := range commands() {
		if c.name == name {
			return c.run
		}
	}
	return func(shell) error { return fmt.Errorf("no command %q: `pressworth help` lists them", name) }
}

// exitCode tells of an error: problems of the input as JSON where the result would stand, all else on standard error.
func (s shell) exitCode(err error) int {
	var problems quote.Problems
	switch {
	case err == nil:
		return done
	case errors.Is(err, flag.ErrHelp):
		fmt.Fprintln(s.err, "pressworth help lists the commands")
		return failed
	case errors.As(err, &problems):
		if _, err := s.out.Write(jobfile.EncodeProblems(problems)); err != nil {
			return failed
		}
		fmt.Fprintln(s.err, "pressworth: the input is not right; what is wrong stands on standard output")
		return badInput
	}
	fmt.Fprintln(s.err, "pressworth:", err)
	return failed
}

// print writes a result.
func (s shell) print(result any) error {
	out := json.NewEncoder(s.out)
	out.SetEscapeHTML(false)
	out.SetIndent("", " ")
	return out.Encode(result)
}

// parse reads flags wherever they stand, and wants the named words beside them.
func (s shell) parse(flags *flag.FlagSet, words ...string) ([]string, error) {
	flags.SetOutput(io.Discard)
	var got []string
	for rest := s.args; len(rest) > 0; {
		if err := flags.Parse(rest); err != nil {
			return nil, err
		}
		if rest = flags.Args(); len(rest) > 0 {
			got, rest = append(got, rest[0]), rest[1:]
		}
	}
	if len(got) < len(words) {
		return nil, fmt.Errorf("%s: %s is missing: `pressworth help` shows how it is called", flags.Name(), words[len(got)])
	}
	if len(got) > len(words) {
		return nil, fmt.Errorf("%s: %q is too much: `pressworth help` shows how it is called", flags.Name(), got[len(words)])
	}
	return got, nil
}

// required wants a flag's value.
func required(flags *flag.FlagSet, names ...string) error {
	for _, n := range names {
		if flags.Lookup(n).Value.String() == "" {
			return fmt.Errorf("%s: --%s is missing: `pressworth help` shows how it is called", flags.Name(), n)
		}
	}
	return nil
}
