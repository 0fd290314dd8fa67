using System.CommandLine;
using MarkReader.Cards;
using MarkReader.CommandLine.Output;
using MarkReader.Drawing.Cards;
using MarkReader.Quantities;

namespace MarkReader.CommandLine.Commands;

/// <summary>card --out FILE: a printable card.</summary>
internal static class CardCommand
{
    public static Command Create()
    {
        string kinds = string.Join(", ", CardKinds.All.Select(k => k.Name));
        string papers = string.Join(", ", Paper.All.Select(p => p.Name));
        Option<string> output = new("--out") { Description = CommandTexts.Get("cardCommand.fileWritePdfPageSvg"), HelpName = "FILE", Required = true };
        Option<string> kind = new("--kind") { Description = CommandTexts.Say("cardCommand.kindCardDefault", kinds, CardKinds.Default), HelpName = "NAME" };
        Option<string> paper = new("--paper") { Description = CommandTexts.Say("cardCommand.pagePdfDefault", papers, Paper.A4.Name), HelpName = "NAME" };
        Command command = new("card", CommandTexts.Get("cardCommand.writeCardPrintAtAnd")) { output, kind, paper };
        command.SetAction(call =>
        {
            Terminal terminal = call.Terminal();
            string file = call.GetRequiredValue(output);
            if (!Kind(call.GetValue(kind) ?? CardKinds.Default, kinds).TryGet(out CardKind? card, out Failure? failure)
                || !CardFormat.OfFile(file).TryGet(out CardFormat? format, out failure)
                || !Paper.Find(call.GetValue(paper) ?? Paper.A4.Name).TryGet(out Paper? page, out failure))
            {
                return terminal.Refuse(failure);
            }

            if (OutputFile.Write(file, CardSheet.Write(card, format, page)) is { } notWritten)
                return terminal.Refuse(notWritten);
            terminal.Out.WriteLine(CommandTexts.Say("cardCommand.cardMmSquareForPrint", file, card.Name, Words.Fixed(card.OuterSide, 0), card.Purpose));
            return ExitStatus.Done;
        });
        return command;
    }

    private static Outcome<CardKind> Kind(string name, string kinds) => CardKinds.Find(name) is { } kind
        ? kind
        : new Failure(CommandLineFailures.ChoiceUnknown, CommandTexts.Word("cardCommand.kindThereNoCardNamed", name), CommandTexts.Word("cardCommand.useOne", kinds));
}
