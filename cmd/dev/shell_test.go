package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strconv"
	"testing"
)

// shells read what they are given as commands: no data may reach one.
var shells = []string{"sh", "bash", "/bin/sh", "/bin/bash", "cmd", "cmd.exe", "powershell", "powershell.exe"}

// startsShell lists the shells that a file names as a text anywhere, wherever it imports os/exec.
func startsShell(tree *ast.File) (found []string) {
	if !slices.ContainsFunc(tree.Imports, func(i *ast.ImportSpec) bool { return i.Path.Value == `"os/exec"` }) {
		return nil
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			if text, err := strconv.Unquote(l.Value); err == nil && slices.Contains(shells, text) {
				found = append(found, text)
			}
		}
		return true
	})
	return found
}

func TestLayout_startsNoShell(t *testing.T) {
	sources(t, func(folder, file string, tree *ast.File) {
		if found := startsShell(tree); found != nil {
			t.Errorf("%s/%s names %v beside os/exec", folder, file, found)
		}
	})
	tree, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\nimport \"os/exec\"\nvar c = exec.Command(\"sh\", \"-c\", data)", 0)
	if err != nil || len(startsShell(tree)) != 1 {
		t.Errorf("the rule does not see a shell in a file that starts one: %v, %v", startsShell(tree), err)
	}
}
