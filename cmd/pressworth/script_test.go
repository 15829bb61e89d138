package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// The test binary is the program when it is called by its name, so scripts run the real commands in processes of their
// own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pressworth": main, "busy": busy})
}

// Each script in testdata/script is one command or one kind of trouble, run in a folder and with a home of its own.
func TestScripts(t *testing.T) {
	fixtures, err := filepath.Abs("testdata")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(env *testscript.Env) error {
			env.Setenv("FIXTURES", fixtures)
			env.Setenv("XDG_DATA_HOME", filepath.Join(env.WorkDir, "data"))
			env.Setenv("DISPLAY", "")
			return os.MkdirAll(filepath.Join(env.WorkDir, "data"), 0o700)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits,
			"json":  jsonValue,
		},
		RequireExplicitExec: true,
	})
}
