// SPDX-License-Identifier: Apache-2.0
// Carrier of the shared precompiled header (DealiiPch.cmake); it has no code of its own.
