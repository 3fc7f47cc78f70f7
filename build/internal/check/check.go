// Package check looks at the whole: what one page alone cannot know (links between pages, reading order), and what only
// the finished HTML shows (addresses that resolve, unique ids, nothing inline). [Book] belongs to every build;
// [Output] reads every byte of the site again and belongs to the check command and to tests.
package check
