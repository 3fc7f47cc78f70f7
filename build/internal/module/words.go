package module

import (
	"bytes"
	"encoding/json"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// The words that a declaration holds for people only are printed in the pages
// when the site is built; the module on the phone never shows them. So the
// module is compiled from the declarations without them, by the Go command's
// overlay of source files. The tree itself is not touched.

// catalogDir is where the declarations are.
const catalogDir = "calc/catalog"

// pageWords are the fields of calc.Worksheet and calc.Input that only pages show.
var pageWords = []string{"Purpose", "Limits", "Cautions", "Sources", "Example", "Help"}

// helpParameter is the name that constructors of inputs give to such words.
const helpParameter = "help"

// withoutWords returns the files of the catalogue without the words for pages:
// path to new content. A tree without a catalogue has none.
func withoutWords(root string) (map[string][]byte, error) {
	names, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(catalogDir), "*.go"))
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{}
	trees := map[string]*ast.File{}
	set := token.NewFileSet()
	takers := map[string]int{} // functions with a parameter for help: its place
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		tree, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, nil // the compiler says it better, with its place
		}
		trees[name] = tree
		findTakers(tree, takers)
	}
	for name, tree := range trees {
		strip(tree, takers)
		keepImports(tree)
		var b bytes.Buffer
		// Comments would be put at odd places; //go: directives have no place here.
		tree.Comments = nil
		if err := format.Node(&b, set, tree); err != nil {
			return nil, err
		}
		files[name] = b.Bytes()
	}
	return files, nil
}

// findTakers notes every function or closure with a parameter called help.
func findTakers(tree *ast.File, takers map[string]int) {
	note := func(name string, t *ast.FuncType) {
		place := 0
		for _, f := range t.Params.List {
			for _, p := range f.Names {
				if p.Name == helpParameter {
					takers[name] = place
				}
				place++
			}
		}
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			if n.Recv == nil {
				note(n.Name.Name, n.Type)
			}
		case *ast.AssignStmt:
			for i, right := range n.Rhs {
				if f, ok := right.(*ast.FuncLit); ok && i < len(n.Lhs) {
					if left, ok := n.Lhs[i].(*ast.Ident); ok {
						note(left.Name, f.Type)
					}
				}
			}
		}
		return true
	})
}

// strip takes the fields and the arguments for pages out of a file.
func strip(tree *ast.File, takers map[string]int) {
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			n.Elts = slices.DeleteFunc(n.Elts, func(e ast.Expr) bool {
				kv, ok := e.(*ast.KeyValueExpr)
				if !ok {
					return false
				}
				key, ok := kv.Key.(*ast.Ident)
				return ok && slices.Contains(pageWords, key.Name)
			})
		case *ast.CallExpr:
			f, ok := n.Fun.(*ast.Ident)
			if !ok {
				return true
			}
			place, ok := takers[f.Name]
			if !ok || place >= len(n.Args) {
				return true
			}
			if word, ok := n.Args[place].(*ast.BasicLit); ok && word.Kind == token.STRING {
				n.Args[place] = &ast.BasicLit{ValuePos: word.ValuePos, Kind: token.STRING, Value: `""`}
			}
		}
		return true
	})
}

// keepImports blanks the imports that only the words needed.
func keepImports(tree *ast.File) {
	used := map[string]bool{}
	ast.Inspect(tree, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			if x, ok := s.X.(*ast.Ident); ok {
				used[x.Name] = true
			}
		}
		return true
	})
	for _, i := range tree.Imports {
		name := strings.Trim(i.Path.Value, `"`)
		name = name[strings.LastIndex(name, "/")+1:]
		if i.Name != nil {
			name = i.Name.Name
		}
		if !used[name] {
			i.Name = ast.NewIdent("_")
		}
	}
}

// writeOverlay puts the files into dir and returns the overlay description
// that the Go command reads.
func writeOverlay(dir string, files map[string][]byte) (string, error) {
	replace := map[string]string{}
	for name, content := range files {
		copied := filepath.Join(dir, filepath.Base(name))
		if err := os.WriteFile(copied, content, 0o644); err != nil {
			return "", err
		}
		replace[name] = copied
	}
	b, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return "", err
	}
	file := filepath.Join(dir, "overlay.json")
	return file, os.WriteFile(file, b, 0o644)
}
