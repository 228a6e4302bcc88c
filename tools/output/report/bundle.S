// SPDX-License-Identifier: Apache-2.0
// The committed bundle of the report page as read-only data; the assembler reads the files as they are.
        .section .rodata
        .global solemech_report_script, solemech_report_script_end
        .global solemech_report_style, solemech_report_style_end
solemech_report_script:
        .incbin "report.js"
solemech_report_script_end:
        .byte 0
solemech_report_style:
        .incbin "report.css"
solemech_report_style_end:
        .byte 0
        .section .note.GNU-stack, "", @progbits
